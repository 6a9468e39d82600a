/** Take-off and athlete: what the flight starts with. Every value is typed, stepped or scrubbed. */

import { createMemo, For, Show } from 'solid-js';
import { useDocument, useFlight, useServices, useShell } from '../../app/page.ts';
import { getGiven, isGiven, numberOf, unitOf, whatLaunches } from '../../app/takeoff-values.ts';
import { type Field, getFields } from '../../document/fields.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { quantityOf } from '../../ui/units.ts';
import { takeoffTexts } from './words.ts';

function FieldRow(props: { field: Field }) {
  const doc = useDocument();
  const title = (): string => takeoffTexts.changed(props.field.label);
  // written by the field as it was when the gesture began: its sign words must not flip under the hand
  let held: Field | undefined;
  return (
    <NumberField
      name={props.field.id}
      label={props.field.label}
      unit={props.field.unit}
      quantity={quantityOf(props.field.unit)}
      value={props.field.value}
      min={props.field.min}
      max={props.field.max}
      step={props.field.step}
      decimals={props.field.decimals}
      sides={props.field.sides}
      onChange={(v) => doc.edit(props.field.write(doc.file(), v), title())}
      onDraft={(v) => {
        held ??= props.field;
        doc.draft(held.write(doc.begin(), v));
      }}
      onSettle={() => {
        held = undefined;
        doc.settle(title());
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
}

function useFields(of: () => FieldChoice) {
  const doc = useDocument();
  const fields = createMemo(() => {
    const { group, main } = of();
    return getFields(doc.file(), doc.athlete()).filter((f) => f.group === group && (!main || f.main));
  });
  const names = createMemo(() => fields().map((f) => f.id), [], { equals: (a, b) => a.join() === b.join() });
  const find = (id: string): Field => fields().find((f) => f.id === id) as Field;
  return { names, find };
}

export function FieldGroup(props: { group: Field['group']; main: boolean }) {
  const { names, find } = useFields(() => props);
  return (
    <For each={names()}>
      {(id) => (
        <Show when={names().includes(id)}>
          <FieldRow field={find(id)} />
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
export function GivenValues(props: { main: boolean }) {
  const doc = useDocument();
  const flight = useFlight();
  const shell = useShell();
  const { flying } = useServices();
  const by = createMemo(() => whatLaunches(doc.file()));
  // a flight of another document was launched by another swing
  const given = createMemo(() =>
    by() && flight.id() === doc.id()
      ? getGiven(flight.result(), flying.launchedTakeoff(flight.result())).filter((f) => f.main || !props.main)
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
                  <dt classList={{ long: one.label.length > 15 }}>{one.label}</dt>
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

export function BeforeColumn() {
  const shell = useShell();
  const doc = useDocument();
  return (
    <section class="before" aria-label={takeoffTexts.before}>
      <h2>
        {takeoffTexts.takeoff}
        <button type="button" class="plain small" onClick={() => shell.openPanel('values')}>
          {takeoffTexts.all}
        </button>
      </h2>
      <FieldGroup group="takeoff" main />
      <GivenValues main />
      <h2 class="whose">
        {takeoffTexts.athlete} <span class="quiet">{doc.athlete().name}</span>
      </h2>
      <FieldGroup group="athlete" main />
    </section>
  );
}
