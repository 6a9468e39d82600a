/** Take-off and athlete: what the flight starts with. Every value is typed, stepped or scrubbed. */

import { createMemo, For, Show } from 'solid-js';
import type { SkillFile } from '../../../sim/index.ts';
import { useAthletes, useDocument, useFlight, useServices, useShell } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import {
  getGiven,
  highestOver,
  isGiven,
  jumpEditsOf,
  numberOf,
  unitOf,
  whatLaunches,
  wordPushedOff,
} from '../../app/takeoff-values.ts';
import { useWhoFlew } from '../../app/who-flew.ts';
import { type Field, getFields } from '../../document/fields.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { useSize } from '../../ui/size.ts';
import { quantityOf, say } from '../../ui/units.ts';
import { takeoffTexts } from './words.ts';

/** The document with the value; or why no flight has it. */
function written(field: Field, from: SkillFile, v: number): { readonly file?: SkillFile; readonly refused?: string } {
  try {
    return { file: field.write(from, v) };
  } catch (error) {
    const isTime = error instanceof Error && 'field' in error && error.field === 'airTime';
    return {
      refused:
        isTime && 'allowed' in error
          ? takeoffTexts.noTime(formatNumber(v, 2), String(error.allowed))
          : wordFault(error),
    };
  }
}

/** `short`: beside the pictures, where its direction is said by them. */
function FieldRow(props: { field: Field; short?: boolean }) {
  const athletes = useAthletes();
  const settled = (): void => {
    if (props.field.group === 'athlete') athletes.changed();
  };
  const doc = useDocument();
  const title = (): string => takeoffTexts.changed(props.field.label);
  // written by the field as it was when the gesture began: its sign words must not flip under the hand
  let held: Field | undefined;
  let refusal: string | undefined;
  return (
    <NumberField
      name={props.field.id}
      label={(props.short && takeoffTexts.short[props.field.id]) || props.field.label}
      hint={takeoffTexts.hints[props.field.id]}
      unit={props.short && props.field.id === 'straight' ? '' : props.field.unit}
      quantity={quantityOf(props.field.unit)}
      value={props.field.value}
      min={props.field.min}
      max={props.field.max}
      step={props.field.step}
      decimals={props.field.decimals}
      sides={props.field.sides}
      onChange={(v) => {
        const { file, refused } = written(props.field, doc.file(), v);
        refusal = refused;
        if (!file) return;
        doc.edit(file, title());
        settled();
      }}
      refusal={() => refusal}
      onDraft={(v) => {
        held ??= props.field;
        const { file } = written(held, doc.begin(), v);
        if (file) doc.draft(file);
      }}
      onSettle={() => {
        held = undefined;
        doc.settle(title());
        settled();
      }}
      onAbandon={() => {
        held = undefined;
        doc.abandon();
      }}
    />
  );
}

/** Fields keep their place in the page while their values change: rows are found by name. */
interface FieldChoice {
  readonly group: Field['group'];
  readonly main: boolean;
  /** these ids */
  readonly only?: readonly string[];
}

function useFields(of: () => FieldChoice) {
  const doc = useDocument();
  const flight = useFlight();
  const { flying } = useServices();
  const athletes = useAthletes();
  const fields = createMemo(() => {
    const { group, main, only } = of();
    const result = flight.result();
    // while another document's flight is shown, it answers nothing about this one
    const all =
      flight.id() === doc.id()
        ? getFields(doc.file(), doc.athlete(), result.jump, jumpEditsOf(flying.jumping, result, athletes.kept()))
        : getFields(doc.file(), doc.athlete());
    const fits = all.filter((f) => f.group === group && (!main || f.main));
    return only ? fits.filter(({ id }) => only.includes(id) && !(id === 'momentum' && isWhole(fits))) : fits;
  });
  const names = createMemo(() => fields().map((f) => f.id), [], { equals: (a, b) => a.join() === b.join() });
  const find = (id: string): Field => fields().find((f) => f.id === id) as Field;
  return { names, find };
}

/** All of the rotation is said: the part about one axis is among all values. */
const isWhole = (fields: readonly Pick<Field, 'id'>[]): boolean => fields.some(({ id }) => id === 'rotation');

export function FieldGroup(props: FieldChoice) {
  const { names, find } = useFields(() => props);
  return (
    <For each={names()}>
      {(id) => (
        <Show when={names().includes(id)}>
          <FieldRow field={find(id)} short={props.only !== undefined} />
        </Show>
      )}
    </For>
  );
}

/** What the numbers of the body rest on, where that is not the usual. */
export function BodyNotes() {
  const flight = useFlight();
  return <For each={flight.result().flight.body.notes ?? []}>{(note) => <p class="quiet">{note}</p>}</For>;
}

/** What a swing or a push gives, to be read; with the way to where it is changed. */
export function GivenValues(props: { main: boolean; only?: readonly string[] }) {
  const doc = useDocument();
  const flight = useFlight();
  const shell = useShell();
  const { flying } = useServices();
  const by = createMemo(() => whatLaunches(doc.file()));
  // a flight of another document was launched by another swing
  const given = createMemo(() =>
    by() && flight.id() === doc.id()
      ? getGiven(flight.result(), flying.launchedTakeoff(flight.result())).filter(
          (f) => (f.main || !props.main) && (props.only?.includes(f.id) ?? true),
        )
      : [],
  );
  const isOld = (): boolean => flight.outcome().isWaiting === true || flight.outcome().fault !== undefined;
  return (
    <Show when={by() && isGiven(doc.file()) && by()}>
      {(kind) => (
        <div class="given" classList={{ stale: isOld() }}>
          <dl>
            <For each={given()}>
              {(one) => (
                <div class="field">
                  <dt classList={{ long: !props.only && one.label.length > 15 }}>
                    {(props.only && takeoffTexts.short[one.id]) || one.label}
                  </dt>
                  <dd>
                    {numberOf(one)} <span class="unit">{unitOf(one)}</span>
                  </dd>
                </div>
              )}
            </For>
          </dl>
          <p class="quiet">
            {takeoffTexts.given[kind()]} <Show when={given().length === 0}>{takeoffTexts.given.pending}</Show>{' '}
            <button
              type="button"
              class="link"
              onClick={() => {
                shell.openPanel(undefined);
                shell.openTool('contact');
              }}
            >
              {takeoffTexts.given.change}
            </button>
          </p>
        </div>
      )}
    </Show>
  );
}

/** What "height" counts from. */
export function HighestPoint() {
  const flight = useFlight();
  const over = () => highestOver(flight.result());
  return <p class="quiet">{takeoffTexts.highest(say('length', over().m), over().over)}</p>;
}

/** Those of the first screen, and of the open bench; each is there where the skill has it. */
const CALM = ['airTime', 'rotation', 'momentum'];
const OPEN = ['airTime', 'rise', 'rotation', 'momentum', 'straight', 'along'];
/** px: the air has room for all of those over the caution */
const ROOM = 246;

export function BeforeColumn() {
  const shell = useShell();
  const flight = useFlight();
  const doc = useDocument();
  const whoFlew = useWhoFlew();
  let column!: HTMLElement;
  const air = useSize(() => column.parentElement ?? column);
  const isOpen = (): boolean => shell.rows.isAll() && air().height >= ROOM;
  return (
    <section ref={column} class="before" classList={{ open: isOpen() }} aria-label={takeoffTexts.before}>
      <h2>
        <button
          type="button"
          class="plain all-values-open"
          aria-haspopup="dialog"
          title={takeoffTexts.all}
          onClick={() => shell.openPanel('values')}
        >
          {takeoffTexts.off(wordPushedOff(flight.result()))}
          <span class="spoken">. {takeoffTexts.all}</span>
        </button>
      </h2>
      <FieldGroup group="takeoff" main={false} only={isOpen() ? OPEN : CALM} />
      <GivenValues main only={isOpen() ? OPEN : CALM} />
      <div class="field whose">
        <span>{takeoffTexts.athlete}</span>
        <button type="button" class="link" aria-haspopup="dialog" onClick={() => shell.openPanel('athlete')}>
          {doc.athlete().name}
        </button>
      </div>
      <Show when={whoFlew()}>{(name) => <p class="quiet was-flown">{takeoffTexts.wasFlown(name())}</p>}</Show>
    </section>
  );
}
