/** Where a code or a name is typed: a first draft of that skill is made from it, or what it can mean is offered. */
import { createMemo, createUniqueId, For, Show } from 'solid-js';
import type { DraftSpec } from '../../../sim/index.ts';
import { Icon } from '../../ui/icon.tsx';
import { codeTexts as t } from '../say/code-texts.ts';
import type { CodeState, Way } from './code-state.ts';

interface CodeFormProps {
  code: CodeState;
  /** the name in full, or why there is none */
  said: string;
  close: () => void;
}

export function CodeForm(props: CodeFormProps) {
  return (
    <Show
      when={props.code.busy()}
      fallback={
        <Show when={props.code.isOpen()}>
          <DraftForm {...props} />
        </Show>
      }
    >
      {(name) => <DraftProgress code={props.code} name={name()} />}
    </Show>
  );
}

function DraftProgress(props: { code: CodeState; name: string }) {
  return (
    <div class="code-form" role="status">
      <p>
        <b>{t.working(props.name)}</b> <span class="quiet">{t.flights(props.code.flights())}</span>
      </p>
      <progress class="code-progress" aria-label={t.working(props.name)} />
      <button type="button" onClick={() => props.code.stop()}>
        {t.cancel}
      </button>
    </div>
  );
}

function DraftForm(props: CodeFormProps) {
  const id = createUniqueId();
  const one = createMemo(() => {
    const asked = props.code.asked();
    return asked?.kind === 'one' ? asked.spec : undefined;
  });
  const several = createMemo(() => {
    const asked = props.code.asked();
    return asked?.kind === 'offers' ? asked : undefined;
  });
  // a name says the way, and so does a dive number
  const isOpenWay = (): boolean => one()?.surface !== 'water' && /^\s*\d/.test(props.code.typed());
  const ways: readonly Way[] = ['backward', 'forward'];
  return (
    <form
      class="code-form"
      onSubmit={(e) => {
        e.preventDefault();
        props.code.ask();
      }}
      onKeyDown={(e) => {
        if (e.key !== 'Escape') return;
        e.preventDefault();
        e.stopPropagation();
        props.close();
      }}
    >
      <Show when={props.said}>
        <p>{props.said}</p>
      </Show>
      <label for={id}>{t.label}</label>
      <span class="code-entry">
        <input
          id={id}
          ref={(el) => queueMicrotask(() => el.focus())}
          class="search"
          value={props.code.typed()}
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          enterkeyhint="go"
          maxLength={80}
          aria-invalid={props.code.fault() !== ''}
          aria-describedby={`${id}-hint`}
          onInput={(e) => props.code.type(e.currentTarget.value)}
        />
        <button type="submit" disabled={several() !== undefined}>
          {t.go}
        </button>
        <button type="button" class="plain square" aria-label={t.close} onClick={() => props.close()}>
          <Icon name="close" size={16} />
        </button>
      </span>
      <Show when={one()}>
        {(spec) => (
          <>
            <p role="status">
              <b>{spec().title}</b> <span class="quiet">{t.places[spec().place]}</span>
            </p>
            <Show when={isOpenWay()}>
              <fieldset class="choice">
                <legend>
                  {t.direction} <span class="quiet">{t.notInCode}</span>
                </legend>
                <For each={ways}>
                  {(way) => (
                    <button
                      type="button"
                      aria-pressed={spec().direction === way}
                      onClick={() => props.code.setWay(way)}
                    >
                      {t.ways[way]}
                    </button>
                  )}
                </For>
              </fieldset>
            </Show>
          </>
        )}
      </Show>
      <Show when={several()}>
        {(asked) => (
          <div class="code-offers">
            <p role="status">{asked().reason ? `${asked().reason} ${t.nearest}` : t.several}</p>
            <For each={asked().offers}>
              {({ title, spec }) => (
                <button type="button" onClick={() => props.code.draft(spec)}>
                  <b>{title}</b> <span class="quiet">{offerNote(spec)}</span>
                </button>
              )}
            </For>
          </div>
        )}
      </Show>
      <p id={`${id}-hint`} class={props.code.fault() ? 'why' : 'quiet'} role={props.code.fault() ? 'alert' : undefined}>
        {props.code.fault() || t.hint}
      </p>
      <Show when={props.code.beyondAsks()}>
        <p>{props.code.beyondAsks()}</p>
        <button type="button" onClick={() => props.code.openBeyond()}>
          {t.beyond}
        </button>
      </Show>
      <Show when={props.code.nearest()}>
        {(spec) => (
          <button type="button" onClick={() => props.code.draft(spec())}>
            {t.instead(spec().title)}
          </button>
        )}
      </Show>
    </form>
  );
}

/** On the bed its code, where that is not its title already. */
const offerNote = ({ place, code }: DraftSpec): string =>
  place === 'trampoline' ? `${code}, ${t.places[place]}` : t.places[place];
