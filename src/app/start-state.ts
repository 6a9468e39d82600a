/** "Start here": the three skills to begin with. It folds for good with the first change of one's own; then Find and the menu have it. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup } from 'solid-js';
import { whenIdle } from '../ui/frame.ts';
import { readStored, writeStored } from '../ui/stored.ts';
import { keptState, type Page } from './page.ts';
import type { PresetSkill } from './services.ts';
import { texts } from './words.ts';

interface Story {
  /** of the ready skill */
  readonly id: string;
  readonly word: string;
  /** of the catalogue: what its picture shows */
  readonly shape: string;
}

export const STORIES: readonly Story[] = [
  { id: 'arms-in-spin', word: texts.start.armsIn, shape: 'wrapped' },
  { id: 'back-tuck', word: texts.start.tuck, shape: 'tuck' },
  { id: 'back-straight-full', word: texts.start.oneArmDown, shape: 'oneDownOneUp' },
];

interface StartState {
  readonly isFolded: Accessor<boolean>;
  /** the story that is open now */
  readonly shown: Accessor<string | undefined>;
  /** one step of the history; loaded where it is not yet */
  open(id: string): void;
  /** markup of the small figure of a story, once it is drawn */
  picture(id: string): string | undefined;
}

const KEY = 'shapeflight.start';
const FOLDED = 'folded';
const SIZE = { width: 44, height: 38 };

function makeStart({ services, doc, flight, shell }: Page): StartState {
  const [isFolded, setFolded] = createSignal(readStored(KEY) === FOLDED);
  const [isReady, setReady] = createSignal(false);
  const [wanted, setWanted] = createSignal<string>();
  const [drawn, setDrawn] = createSignal<Readonly<Record<string, string>>>({});

  createEffect(() => {
    if (isFolded() || !doc.history().done.some((step) => !step.opened)) return;
    setFolded(true);
    writeStored(KEY, FOLDED);
  });
  // after the first picture, one in each idle time
  createEffect(() => {
    if ((isFolded() && shell.panel() !== 'start') || !shell.stage.isDrawn() || isReady()) return;
    let away = (): void => {};
    const draw = ([story, ...rest]: readonly Story[]): void => {
      if (!story) {
        setReady(true);
        return;
      }
      away = whenIdle(() => {
        const result = flight.result();
        const angles = services.posing.poseOf(result.flight.body, services.presets.shapes[story.shape]);
        const markup = services.pictures.poseTile(result, angles, SIZE.width, SIZE.height);
        setDrawn((known) => ({ ...known, [story.id]: markup }));
        draw(rest);
      });
    };
    draw(STORIES);
    onCleanup(() => away());
  });

  const find = (id: string): PresetSkill | undefined => services.presets.skills.find((one) => one.id === id);
  createEffect(() => {
    const id = wanted();
    const found = id === undefined ? undefined : find(id);
    if (!found) return;
    setWanted(undefined);
    doc.openSoon(structuredClone(found.file), texts.files.opened(found.file.title));
  });
  return {
    isFolded,
    shown: createMemo(() => {
      const { title } = doc.file();
      if (title === services.presets.first.title && !isReady()) return STORIES[0].id;
      return isReady() ? STORIES.find(({ id }) => find(id)?.file.title === title)?.id : undefined;
    }),
    open: setWanted,
    picture: (id) => drawn()[id],
  };
}

export const useStart = keptState(makeStart);
