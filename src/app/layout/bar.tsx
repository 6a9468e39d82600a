/** The bar: whose skill it is, and what can be done with the whole of it. */
import { Show, untrack } from 'solid-js';
import { commandTexts } from '../../commands/words.ts';
import { printTexts } from '../../features/print/words.ts';
import { Icon, Mark } from '../../ui/icon.tsx';
import type { Bench } from '../bench.ts';
import { useShelf } from '../shelf.ts';
import { shelfTexts } from '../shelf-words.ts';
import { texts } from '../words.ts';
import { ToolBar } from './tools/tool-bar.tsx';

const t = texts.bar;

export function SkillTitle(props: { bench: Bench }) {
  return (
    <button
      type="button"
      class="skill-title"
      aria-haspopup="dialog"
      title={t.skillsTitle}
      onClick={() => props.bench.openPanel('skills')}
    >
      <b>{props.bench.file().title || texts.untitled}</b>
      <Icon name="down" size={16} />
    </button>
  );
}

/** How the skill stands against the shelf; a press saves it. */
export function ShelfMark(props: { bench: Bench }) {
  const shelf = untrack(() => useShelf(props.bench));
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
export function NotSaved(props: { bench: Bench }) {
  return (
    <Show when={!props.bench.kept()}>
      <span class="not-kept" role="status">
        <b title={shelfTexts.notSavedWhy}>{shelfTexts.notSaved}</b>
        <span class="spoken">. {shelfTexts.notSavedWhy} </span>
        <button type="button" class="link" onClick={() => props.bench.saveFile()}>
          {shelfTexts.saveFile}
        </button>
      </span>
    </Show>
  );
}

export function UndoRedo(props: { bench: Bench; words?: boolean }) {
  const named = (word: string, title: string | undefined, of: (s: string) => string): string =>
    title ? of(title) : word;
  return (
    <>
      <button
        type="button"
        class={props.words ? 'plain' : 'plain square'}
        aria-label={props.words ? undefined : t.undo}
        disabled={props.bench.undoTitle() === undefined}
        data-leaves-undo
        title={named(t.undo, props.bench.undoTitle(), t.undoOf)}
        onClick={() => props.bench.undo()}
      >
        <Show when={!props.words} fallback={t.undo}>
          <Icon name="undo" />
        </Show>
      </button>
      <button
        type="button"
        class={props.words ? 'plain' : 'plain square'}
        aria-label={props.words ? undefined : t.redo}
        disabled={props.bench.redoTitle() === undefined}
        data-leaves-undo
        title={named(t.redo, props.bench.redoTitle(), t.redoOf)}
        onClick={() => props.bench.redo()}
      >
        <Show when={!props.words} fallback={t.redo}>
          <Icon name="redo" />
        </Show>
      </button>
    </>
  );
}

export function FindButton(props: { bench: Bench; words?: boolean }) {
  return (
    <button
      type="button"
      class={props.words ? 'plain' : 'plain square'}
      aria-label={props.words ? undefined : commandTexts.find}
      aria-haspopup="dialog"
      title={commandTexts.findTitle}
      data-leaves-undo
      onClick={() => props.bench.openPanel('commands')}
    >
      <Icon name="find" size={18} />
      <Show when={props.words}> {commandTexts.find}</Show>
    </button>
  );
}

export function Bar(props: { bench: Bench }) {
  const who = (): string => {
    const { name, club } = props.bench.athlete();
    return club ? `${name}, ${club}` : name;
  };
  return (
    <header class="bar">
      <span class="brand">
        <Mark />
        <span class="brand-name">{texts.product}</span>
      </span>
      <SkillTitle bench={props.bench} />
      <ShelfMark bench={props.bench} />
      <span class="who">{who()}</span>
      <span class="gap" />
      <NotSaved bench={props.bench} />
      <ToolBar bench={props.bench} />
      <UndoRedo bench={props.bench} />
      <FindButton bench={props.bench} words />
      <button type="button" class="plain" data-leaves-undo onClick={() => props.bench.openPanel('menu')}>
        {t.theme}
      </button>
      <button type="button" class="plain file-work" onClick={() => props.bench.openPanel('print')}>
        {printTexts.print}
      </button>
      <button type="button" class="file-work" onClick={() => props.bench.openFile()}>
        {t.open}
      </button>
      <button type="button" class="file-work" onClick={() => props.bench.saveFile()}>
        {t.save}
      </button>
    </header>
  );
}

export function TouchBar(props: { bench: Bench; title: boolean }) {
  return (
    <header class="bar">
      <span class="brand">
        <Mark />
      </span>
      <SkillTitle bench={props.bench} />
      <Show when={props.title}>
        <ShelfMark bench={props.bench} />
      </Show>
      <span class="gap" />
      <NotSaved bench={props.bench} />
      <Show when={props.title}>
        <UndoRedo bench={props.bench} />
      </Show>
      <FindButton bench={props.bench} />
      <button
        type="button"
        class="square"
        aria-label={t.menu}
        aria-haspopup="dialog"
        data-leaves-undo
        onClick={() => props.bench.openPanel('menu')}
      >
        <Icon name="menu" />
      </button>
    </header>
  );
}
