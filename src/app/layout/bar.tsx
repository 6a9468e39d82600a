/** The bar: whose skill it is, and what can be done with the whole of it. */
import { Show } from 'solid-js';
import { commandTexts } from '../../commands/words.ts';
import { printTexts } from '../../features/print/words.ts';
import { Icon, Mark } from '../../ui/icon.tsx';
import { useDocument, usePage, useShell } from '../page.ts';
import { useShelf } from '../shelf.ts';
import { shelfTexts } from '../shelf-words.ts';
import { texts } from '../words.ts';
import { ToolBar } from './tools/tool-bar.tsx';

const t = texts.bar;

function SkillTitle() {
  const shell = useShell();
  const doc = useDocument();
  return (
    <button
      type="button"
      class="skill-title"
      aria-haspopup="dialog"
      title={t.skillsTitle}
      onClick={() => shell.openPanel('skills')}
    >
      <b>{doc.file().title || texts.untitled}</b>
      <Icon name="down" size={16} />
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

export function UndoRedo(props: { words?: boolean }) {
  const { undoing } = useShell();
  return (
    <>
      <StepButton words={props.words} name="undo" of={undoing().undoTitle()} step={() => undoing().undo()} />
      <StepButton words={props.words} name="redo" of={undoing().redoTitle()} step={() => undoing().redo()} />
    </>
  );
}

function StepButton(props: { words?: boolean; name: 'undo' | 'redo'; of: string | undefined; step: () => void }) {
  const word = (): string => t[props.name];
  return (
    <button
      type="button"
      class={props.words ? 'plain' : 'plain square'}
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

function FindButton(props: { words?: boolean }) {
  const shell = useShell();
  return (
    <button
      type="button"
      class={props.words ? 'plain' : 'plain square'}
      aria-label={props.words ? undefined : commandTexts.find}
      aria-haspopup="dialog"
      title={commandTexts.findTitle}
      data-leaves-undo
      onClick={() => shell.openPanel('commands')}
    >
      <Icon name="find" size={18} />
      <Show when={props.words}> {commandTexts.find}</Show>
    </button>
  );
}

export function Bar() {
  const doc = useDocument();
  const shell = useShell();
  const who = (): string => {
    const { name, club } = doc.athlete();
    return club ? `${name}, ${club}` : name;
  };
  return (
    <header class="bar">
      <span class="brand">
        <Mark />
        <span class="brand-name">{texts.product}</span>
      </span>
      <SkillTitle />
      <ShelfMark />
      <span class="who">{who()}</span>
      <span class="gap" />
      <NotSaved />
      <ToolBar />
      <UndoRedo />
      <FindButton words />
      <button type="button" class="plain" data-leaves-undo onClick={() => shell.openPanel('menu')}>
        {t.theme}
      </button>
      <button type="button" class="plain file-work" onClick={() => shell.openPanel('print')}>
        {printTexts.print}
      </button>
      <button type="button" class="file-work" onClick={() => doc.openFile()}>
        {t.open}
      </button>
      <button type="button" class="file-work" onClick={() => doc.saveFile()}>
        {t.save}
      </button>
    </header>
  );
}

export function TouchBar(props: { title: boolean }) {
  const shell = useShell();
  return (
    <header class="bar">
      <span class="brand">
        <Mark />
      </span>
      <SkillTitle />
      <Show when={props.title}>
        <ShelfMark />
      </Show>
      <span class="gap" />
      <NotSaved />
      <Show when={props.title}>
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
