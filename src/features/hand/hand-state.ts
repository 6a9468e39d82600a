/** What is handed on, as it is ticked, and which way is picked. Nothing of it is remembered: every opening begins without ticks. */
import { createMemo, createSignal, onCleanup } from 'solid-js';
import type { Along } from '../../../sim/index.ts';
import { baseAddress } from '../../app/base-address.ts';
import type { OfferedClip } from '../../app/clip-door.ts';
import type { Page } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import type { Handing } from '../../engine/handing.ts';
import { hasCode, makeCode } from './code-picture.ts';
import { useLater } from './later.ts';
import type { HandState, WayWork } from './way.ts';

const NOTHING: Along = { name: false, age: false, mass: false, sheets: false, film: false };
/** letters of a link whose code a phone still reads well from a page held up: 93 modules, version 19 (our judgement) */
const FINE = 792;
/** ms that a word stays at its way */
const SAID = 2000;

export function makeHandState(page: Page, room: Handing, first: string): HandState {
  const { doc } = page;
  const door = page.shell.clipDoor;
  const [along, setAlong] = createSignal(NOTHING);
  const [picked, pick] = createSignal(first);
  const [said, setSaid] = createSignal<{ id: string; text: string }>();
  const [failed, setFailed] = createSignal<{ id: string; text: string }>();
  const [works, setWorks] = createSignal<Readonly<Record<string, WayWork | undefined>>>({});
  const made = createMemo(() => attempt(() => room.keepBack(doc.chain(), doc.athlete(), along())));
  const written = createMemo(() => {
    const { value } = made();
    return value ? attempt(() => room.writeSkillLink(value)) : {};
  });
  const addressed = (fragment: string | undefined): string | undefined =>
    fragment === undefined ? undefined : `${baseAddress() ?? ''}#${fragment}`;
  const forCode = createMemo(() => {
    const { value } = made();
    const link = addressed(written().value);
    if (!value?.file.worksheets?.length || (link !== undefined && link.length <= FINE))
      return link === undefined ? undefined : { link, isWithoutSheets: false };
    const { worksheets: _, ...file } = value.file;
    const bare = addressed(attempt(() => room.writeSkillLink({ ...value, file })).value);
    return bare === undefined ? undefined : { link: bare, isWithoutSheets: true };
  });
  const code = useLater(() => {
    const link = baseAddress() === undefined ? undefined : forCode()?.link;
    if (link === undefined || !hasCode(link)) return undefined;
    return function* () {
      yield;
      return makeCode(link);
    };
  });
  /** one that is open and was not kept is not what the skill's times are of */
  const offered = (): OfferedClip | undefined => {
    const clip = along().film ? door.offered() : undefined;
    return clip && room.isFilmOf(doc.chain(), clip.name) ? clip : undefined;
  };
  const [opened, open] = createSignal<string>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  onCleanup(() => {
    clearTimeout(timer);
    for (const work of Object.values(works())) work?.cancel();
  });
  const fail = (id: string, text: string | undefined): void => {
    if (text !== undefined) setFailed({ id, text });
    else if (failed()?.id === id) setFailed(undefined);
  };
  const state: HandState = {
    page,
    along,
    tick: (what) => setAlong({ ...along(), [what]: !along()[what] }),
    handed: () => made().value,
    hasFilm: () => room.hasFilm(doc.chain()),
    withClip: room.withClip,
    offered,
    clip: () => (door.sends() ? offered() : undefined),
    cannot: () => made().fault,
    linkFault: () => written().fault,
    link: () => addressed(written().value),
    codeLink: forCode,
    code,
    open,
    opened,
    base: baseAddress,
    picked,
    pick,
    run: (way) => {
      const wasPicked = picked() === way.id;
      pick(way.id);
      if (made().value === undefined || way.refused?.(state) !== undefined || works()[way.id]) return;
      fail(way.id, undefined);
      void Promise.resolve()
        .then(() => way.run(state, wasPicked))
        .catch((error: unknown) => fail(way.id, `${wordFault(error)}.`));
    },
    say: (id, text) => {
      clearTimeout(timer);
      setSaid({ id, text });
      timer = setTimeout(() => setSaid(undefined), SAID);
    },
    said,
    fail,
    failed,
    work: (id, work) => setWorks({ ...works(), [id]: work }),
    workOf: (id) => works()[id],
  };
  return state;
}

function attempt<T>(make: () => T): { readonly value?: T; readonly fault?: string } {
  try {
    return { value: make() };
  } catch (error) {
    return { fault: wordFault(error) };
  }
}
