/** The skill's code under the sentence. It is also where a code is typed: a first draft of that skill is made from it. */
import { type Accessor, createEffect, createMemo, createSignal, createUniqueId, For, on, Show } from 'solid-js';
import type { DraftSpec } from '../../../sim/index.ts';
import type { DraftRun } from '../../engine/draft.ts';
import { CutText } from '../../ui/cut-text.tsx';
import { Icon } from '../../ui/icon.tsx';
import { useDevice } from '../../ui/size.ts';
import { keptState, type Page, useFlight, useServices } from '../page.ts';
import { codeTexts } from '../say/code-texts.ts';
import { wordCode, wordFalls, wordNoCode, wordShortCode } from '../say/code-words.ts';
import { wordFault } from '../say/fault-words.ts';
import { texts } from '../words.ts';

const t = codeTexts;
type Way = DraftSpec['direction'];

interface CodeState {
  readonly isOpen: Accessor<boolean>;
  readonly typed: Accessor<string>;
  readonly way: Accessor<Way | undefined>;
  /** the code that is being drafted, and how many flights were tried */
  readonly busy: Accessor<string | undefined>;
  readonly flights: Accessor<number>;
  readonly fault: Accessor<string>;
  open(): void;
  close(): void;
  type(text: string): void;
  setWay(way: Way): void;
  /** whole and well-formed */
  isCode(text: string): boolean;
  start(code?: string): void;
  stop(): void;
}

function makeCode(page: Page): CodeState {
  const { services, shell, doc } = page;
  const [isOpen, setOpen] = createSignal(false);
  const [typed, setTyped] = createSignal('');
  const [way, setWay] = createSignal<Way>();
  const [busy, setBusy] = createSignal<string>();
  const [flights, setFlights] = createSignal(0);
  const [fault, setFault] = createSignal('');
  let run: DraftRun | undefined;
  const { readCode, draft } = services.drafting;
  const stop = (): void => {
    const code = busy();
    run?.stop();
    run = undefined;
    setBusy(undefined);
    setOpen(false);
    if (code) shell.notify({ text: t.cancelled(code) });
  };
  const start = (code = typed()): void => {
    if (code.trim() === '') {
      setFault(t.empty);
      return;
    }
    let spec: DraftSpec;
    try {
      spec = readCode(code, way());
    } catch (error) {
      setTyped(code);
      setFault(wordFault(error));
      setOpen(true);
      return;
    }
    run?.stop();
    setFault('');
    setFlights(0);
    setBusy(spec.code);
    const athlete = doc.athlete();
    const own = draft(
      { code, direction: way(), athlete, ref: doc.file().athlete, shapes: services.presets.shapes },
      setFlights,
    );
    run = own;
    own.done.then(
      ({ file, falls }) => {
        if (run !== own) return;
        setBusy(undefined);
        setOpen(false);
        doc.open(file, t.step(spec.code));
        shell.notify({ text: falls.length > 0 ? t.falls(spec.code, wordFalls(falls)) : t.done(spec.code) });
      },
      (error: unknown) => {
        if (run !== own) return;
        setBusy(undefined);
        setFault(`${t.failed} ${wordFault(error)}`);
        setOpen(true);
      },
    );
  };
  return {
    isOpen,
    typed,
    way,
    busy,
    flights,
    fault,
    open: () => setOpen(true),
    close: () => {
      setOpen(false);
      setFault('');
    },
    type: (text) => {
      setTyped(text);
      setWay(undefined);
      setFault('');
    },
    setWay: (chosen) => {
      setWay(chosen);
    },
    isCode: (text) => {
      try {
        return text.trim() !== '' && readCode(text) !== undefined;
      } catch {
        return false;
      }
    },
    start,
    stop,
  };
}

/** The code as a quiet line; a press makes it a place to type one. */
export const useCode = keptState(makeCode);

export function CodeLine() {
  const flight = useFlight();
  const code = useCode();
  const own = () => flight.result().code;
  const device = useDevice();
  const shown = (): string => (device() === 'phone' ? wordShortCode(own()) : wordCode(own()));
  let line!: HTMLButtonElement;
  const close = (): void => {
    code.close();
    line?.focus();
  };
  // the form goes when the draft is begun, done or stopped: the focus of who typed in it goes to the line
  createEffect(
    on(
      () => [code.isOpen(), code.busy()],
      () => {
        if (document.activeElement === document.body || document.activeElement === null) line.focus();
      },
      { defer: true },
    ),
  );
  return (
    <div class="code-place">
      <p class="code quiet" data-testid="code">
        <button
          ref={line}
          type="button"
          class="code-open"
          aria-expanded={code.isOpen()}
          title={`${t.open}. ${wordNoCode(own()) || texts.sentence.codeMeans}`}
          onClick={() => (code.isOpen() ? close() : code.open())}
        >
          <CutText text={shown() || texts.sentence.noCodeHere} />
        </button>
      </p>
      <Show when={code.busy()}>{(name) => <DraftProgress code={code} name={name()} />}</Show>
      <Show when={code.isOpen() && !code.busy()}>
        <CodeForm code={code} said={[wordCode(own()), wordNoCode(own())].filter(Boolean).join('. ')} close={close} />
      </Show>
    </div>
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

/** `said`: the code in full, or why there is none. */
function CodeForm(props: { code: CodeState; said: string; close: () => void }) {
  const services = useServices();
  const id = createUniqueId();
  const readable = createMemo(() => {
    const text = props.code.typed();
    if (!props.code.isCode(text)) return undefined;
    const { direction } = services.drafting.readCode(text, props.code.way());
    // a dive number says its direction: asking for the other one changes nothing
    const other = direction === 'backward' ? 'forward' : 'backward';
    return { direction, isFixed: services.drafting.readCode(text, other).direction === direction };
  });
  const ways: readonly Way[] = ['backward', 'forward'];
  return (
    <form
      class="code-form"
      onSubmit={(e) => {
        e.preventDefault();
        props.code.start();
      }}
      onKeyDown={(e) => {
        if (e.key !== 'Escape') return;
        e.preventDefault();
        e.stopPropagation();
        props.close();
      }}
    >
      <p>{props.said}</p>
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
          maxLength={40}
          aria-invalid={props.code.fault() !== ''}
          aria-describedby={`${id}-hint`}
          onInput={(e) => props.code.type(e.currentTarget.value)}
        />
        <button type="submit">{t.go}</button>
        <button type="button" class="plain square" aria-label={t.close} onClick={() => props.close()}>
          <Icon name="close" size={16} />
        </button>
      </span>
      <Show when={readable()}>
        {(one) => (
          <Show when={!one().isFixed} fallback={<p class="quiet">{t.inCode[one().direction]}</p>}>
            <fieldset class="choice">
              <legend>
                {t.direction} <span class="quiet">{t.notInCode}</span>
              </legend>
              <For each={ways}>
                {(way) => (
                  <button type="button" aria-pressed={one().direction === way} onClick={() => props.code.setWay(way)}>
                    {t.ways[way]}
                  </button>
                )}
              </For>
            </fieldset>
          </Show>
        )}
      </Show>
      <p id={`${id}-hint`} class={props.code.fault() ? 'why' : 'quiet'} role={props.code.fault() ? 'alert' : undefined}>
        {props.code.fault() || t.hint}
      </p>
    </form>
  );
}
