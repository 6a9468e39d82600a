/** The bar: whose skill it is, what can be asked of it, and the way to everything else. */
import { For, Show } from 'solid-js';
import { commandTexts } from '../../commands/words.ts';
import { CutText } from '../../ui/cut-text.tsx';
import { Icon, Mark } from '../../ui/icon.tsx';
import { inWords } from '../../ui/names.ts';
import { useDocument, usePage, useShell } from '../page.ts';
import { useShelf } from '../shelf.ts';
import { shelfTexts } from '../shelf-words.ts';
import { useWhoFlew } from '../who-flew.ts';
import { texts } from '../words.ts';
import { BarTools } from './tools/bar-tools.tsx';

const t = texts.bar;

/** `who`: under it the athlete, who may be another with each skill that is opened; on a phone by name alone. */
function SkillTitle(props: { who?: 'words' | 'name' }) {
  const shell = useShell();
  const doc = useDocument();
  const title = (): string => inWords(doc.file().title) || texts.untitled;
  const isRoom = (): boolean => shell.tool() === 'class';
  return (
    <button
      type="button"
      class="skill-title"
      aria-haspopup={isRoom() ? undefined : 'dialog'}
      title={isRoom() ? t.toBench(title()) : `${title()}. ${t.skillsTitle}`}
      onClick={() => (isRoom() ? shell.openTool(undefined) : shell.openPanel('skills'))}
    >
      <Show when={isRoom()}>
        <Icon name="back" size={16} />
      </Show>
      <b>
        <CutText text={title()} bare />
        <Show when={props.who && !shell.hall() && doc.athlete().name}>
          {(name) => <span class="title-who">{props.who === 'name' ? name() : t.flownBy(name())}</span>}
        </Show>
      </b>
      <Show when={!isRoom()}>
        <Icon name="down" size={16} />
      </Show>
    </button>
  );
}

/** How the skill compares with the shelf; a press saves it. */
function ShelfMark() {
  const shelf = useShelf();
  return (
    <Show when={!shelf.refused()}>
      <button
        type="button"
        class="plain small shelf-mark"
        disabled={shelf.state() === 'saved'}
        title={shelf.state() === 'unsaved' ? shelfTexts.save : shelfTexts.state[shelf.state()]}
        onClick={() => void shelf.save()}
      >
        {shelfTexts.stateShort[shelf.state()]}
      </button>
    </Show>
  );
}

/** The browser refuses to keep what is open: said where it stays in sight, with the way out. */
function NotSaved() {
  const keeping = usePage().keeping;
  const doc = useDocument();
  return (
    <Show when={!keeping.isKept()}>
      <span class="not-kept" role="status">
        <b title={shelfTexts.notSavedWhy}>{shelfTexts.notSaved}</b>
        <span class="spoken">. {shelfTexts.notSavedWhy} </span>
        <button type="button" class="link" onClick={() => doc.saveFile()}>
          {shelfTexts.saveFile}
        </button>
      </span>
    </Show>
  );
}

/** What was kept before is still to come. */
function StillReading() {
  const keeping = usePage().keeping;
  return (
    <Show when={keeping.isReading()}>
      <span class="not-kept" role="status" title={shelfTexts.readingWhy}>
        {shelfTexts.reading}
        <span class="spoken">. {shelfTexts.readingWhy}</span>
      </span>
    </Show>
  );
}

/** On a phone: the last step alone, and only while there is one. */
function UndoAlone() {
  const { undoing } = useShell();
  return (
    <Show when={undoing().undoTitle()}>
      {(of) => <StepButton name="undo" of={of()} step={() => undoing().undo()} />}
    </Show>
  );
}

/** Nothing to take back and nothing to bring back: neither is there. One alone keeps the place of the other. */
export function UndoRedo(props: { words?: boolean }) {
  const { undoing } = useShell();
  const isAny = (): boolean => undoing().undoTitle() !== undefined || undoing().redoTitle() !== undefined;
  return (
    <Show when={isAny()}>
      <StepButton words={props.words} name="undo" of={undoing().undoTitle()} step={() => undoing().undo()} />
      <StepButton words={props.words} name="redo" of={undoing().redoTitle()} step={() => undoing().redo()} />
    </Show>
  );
}

function StepButton(props: { words?: boolean; name: 'undo' | 'redo'; of: string | undefined; step: () => void }) {
  const word = (): string => t[props.name];
  return (
    <button
      type="button"
      class={props.words ? 'plain' : 'plain square'}
      classList={{ absent: props.of === undefined }}
      aria-label={props.words ? undefined : word()}
      disabled={props.of === undefined}
      data-leaves-undo
      title={props.of ? t[`${props.name}Of`](props.of) : word()}
      onClick={() => props.step()}
    >
      <Show when={!props.words} fallback={word()}>
        <Icon name={props.name} />
      </Show>
    </button>
  );
}

function FindButton() {
  const shell = useShell();
  return (
    <button
      type="button"
      class="plain square"
      aria-label={commandTexts.find}
      aria-haspopup="dialog"
      title={commandTexts.findTitle}
      data-leaves-undo
      onClick={() => shell.openPanel('commands')}
    >
      <Icon name="find" size={18} />
    </button>
  );
}

const WAYS = [
  { panel: 'commands', word: commandTexts.find, title: commandTexts.findTitle },
  { panel: 'menu', word: t.menu, title: t.menuTitle },
] as const;

export function Bar() {
  const shell = useShell();
  return (
    <header class="bar">
      <span class="brand">
        <Mark />
        <span class="brand-name">{texts.product}</span>
      </span>
      <SkillTitle />
      <StillReading />
      <NotSaved />
      <BarTools />
      <span class="bar-rule" aria-hidden="true" />
      <UndoRedo words />
      <For each={WAYS}>
        {({ panel, word, title }) => (
          <button
            type="button"
            class="plain"
            aria-haspopup="dialog"
            title={title}
            data-leaves-undo
            onClick={() => shell.openPanel(panel)}
          >
            {word}
          </button>
        )}
      </For>
    </header>
  );
}

export function TouchBar(props: { title: boolean }) {
  const shell = useShell();
  const whoFlew = useWhoFlew();
  return (
    <header class="bar">
      {/* on a phone the name of the skill needs the room more */}
      <Show when={props.title}>
        <span class="brand">
          <Mark />
        </span>
      </Show>
      <SkillTitle who={props.title ? (whoFlew() === undefined ? undefined : 'words') : 'name'} />
      <Show when={props.title}>
        <ShelfMark />
      </Show>
      <span class="gap" />
      <StillReading />
      <NotSaved />
      <Show when={props.title} fallback={<UndoAlone />}>
        <UndoRedo />
      </Show>
      <FindButton />
      <button
        type="button"
        class="square"
        aria-label={t.menu}
        aria-haspopup="dialog"
        data-leaves-undo
        onClick={() => shell.openPanel('menu')}
      >
        <Icon name="menu" />
      </button>
    </header>
  );
}
