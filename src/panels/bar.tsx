/** The bar: whose skill it is, and what can be done with the whole of it. */
import { Show } from 'solid-js';
import { texts } from '../texts.ts';
import type { Bench } from './bench.ts';
import { Icon, Mark } from './parts/icon.tsx';
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

export function UndoRedo(props: { bench: Bench }) {
  const named = (word: string, title: string | undefined, of: (s: string) => string): string =>
    title ? of(title) : word;
  return (
    <>
      <button
        type="button"
        class="plain"
        disabled={!props.bench.canUndo()}
        title={named(t.undo, props.bench.undoTitle(), t.undoOf)}
        onClick={() => props.bench.undo()}
      >
        {t.undo}
      </button>
      <button
        type="button"
        class="plain"
        disabled={!props.bench.canRedo()}
        title={named(t.redo, props.bench.redoTitle(), t.redoOf)}
        onClick={() => props.bench.redo()}
      >
        {t.redo}
      </button>
    </>
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
      <span class="who">{who()}</span>
      <span class="gap" />
      <Show when={!props.bench.kept()}>
        <span class="not-kept" role="status">
          {t.notSaved}
        </span>
      </Show>
      <ToolBar bench={props.bench} />
      <UndoRedo bench={props.bench} />
      <button type="button" class="plain" onClick={() => props.bench.openPanel('help')}>
        {t.help}
      </button>
      <button type="button" class="plain" onClick={() => props.bench.openPanel('menu')}>
        {t.theme}
      </button>
      <button type="button" onClick={() => props.bench.openFile()}>
        {t.open}
      </button>
      <button type="button" onClick={() => props.bench.saveFile()}>
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
      <span class="gap" />
      <Show when={props.title}>
        <UndoRedo bench={props.bench} />
      </Show>
      <button
        type="button"
        class="square"
        aria-label={t.menu}
        aria-haspopup="dialog"
        onClick={() => props.bench.openPanel('menu')}
      >
        <Icon name="menu" />
      </button>
    </header>
  );
}
