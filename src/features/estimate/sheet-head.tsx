/** Which sheet, its title, and what can be done with it. */
import { createMemo, createUniqueId, For, Show, untrack } from 'solid-js';
import { pickFile, saveBlob } from '../../app/file-door.ts';
import { useFlight, useServices, useShell } from '../../app/page.ts';
import { readText } from '../../app/read-text.ts';
import { wordFault, wordFileName } from '../../app/say/fault-words.ts';
import type { FlightResult } from '../../engine/result.ts';
import { units } from '../../ui/units.ts';
import type { EstimateState } from './estimate-state.ts';
import { WITH_SKILL } from './sheet-desk.ts';
import { estimateTexts as e } from './words.ts';

interface HeadProps {
  readonly state: EstimateState;
  readonly guide: boolean;
  readonly onGuide: () => void;
}

/** In the list of sheets: one more of one's own. */
const NEW = 'new';

export function SheetHead(props: HeadProps & { actions: boolean }) {
  const id = createUniqueId();
  const desk = untrack(() => props.state.desk);
  const open = (): string => desk.shown()?.id ?? '';
  // letters typed into a line leave the list alone
  const own = createMemo(() => desk.own().map(({ id, sheet }) => ({ id, title: sheet.title })), [], {
    equals: (a, b) => JSON.stringify(a) === JSON.stringify(b),
  });
  const choose = (chosen: string): void => {
    if (chosen === NEW) desk.startNew();
    else desk.choose(chosen);
  };
  return (
    <div class="sheet-head">
      <label for={id}>{e.sheet}</label>
      <select id={id} value={open()} onChange={(event) => choose(event.currentTarget.value)}>
        <optgroup label={e.own}>
          <For each={own()}>
            {(one) => (
              <option value={one.id} selected={one.id === open()}>
                {one.title}
              </option>
            )}
          </For>
          <option value={NEW}>{e.newSheet}</option>
        </optgroup>
        <Show when={props.state.hasSkillSheet()}>
          <option value={WITH_SKILL} selected={open() === WITH_SKILL}>
            {e.withSkill}
          </option>
        </Show>
        <optgroup label={e.ready}>
          <For each={props.state.engine()?.sheets ?? []}>
            {(one) => (
              <option value={one.id} selected={one.id === open()}>
                {one.sheet.title}
              </option>
            )}
          </For>
        </optgroup>
      </select>
      <Show when={desk.isOwn() || open() === WITH_SKILL}>
        <input
          type="text"
          class="sheet-title"
          aria-label={e.titleLabel}
          value={props.state.sheet()?.title ?? ''}
          maxLength={200}
          onInput={(event) => props.state.setTitle(event.currentTarget.value)}
        />
      </Show>
      <Show when={props.actions}>
        <SheetActions {...props} />
      </Show>
    </div>
  );
}

export function SheetActions(props: HeadProps) {
  const shell = useShell();
  const services = useServices();
  const flight = useFlight();
  const fault = (error: unknown): void => {
    shell.notify({ text: e.failed(error instanceof Error ? error.message : String(error)) });
  };
  const name = (): string =>
    (props.state.sheet()?.title ?? '').replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase() || 'sheet';
  const write = (also: 'csv' | 'page'): void => {
    const sheet = props.state.sheet();
    const result: FlightResult = flight.result();
    if (!sheet) return;
    // opened at once: a window that opens later is taken for one that nobody asked for
    const shown = also === 'page' ? window.open('', '_blank') : undefined;
    const title = name();
    props.state
      .engine()
      ?.compute(sheet, result, { also, measure: units().measure })
      .then(({ csv, page }) => {
        if (csv !== undefined) saveBlob(`${title}.csv`, new Blob([csv], { type: 'text/csv' }));
        if (page === undefined) return;
        const blob = new Blob([page], { type: 'text/html' });
        if (shown) shown.location.href = URL.createObjectURL(blob);
        else saveBlob(`${title}.html`, blob);
      })
      .catch((error: unknown) => {
        shown?.close();
        fault(error);
      });
  };
  const save = (): void => {
    const sheet = props.state.sheet();
    const by = props.state.engine();
    if (sheet && by) saveBlob(`${name()}.sheet.json`, new Blob([by.write(sheet)], { type: 'application/json' }));
  };
  const open = (): void => {
    const { state } = untrack(() => props);
    pickFile((file) => {
      const by = state.engine();
      if (!by) return;
      services.load
        .filing()
        .then((filing) => readText(file, filing))
        .then((text) => state.desk.add(by.read(text, file.name)))
        .catch((error: unknown) => {
          shell.notify({ text: e.openFailed(wordFileName(file.name), `${wordFault(error)}.`) });
        });
    }, '.json,.txt,application/json,text/plain');
  };
  return (
    <div class="sheet-actions">
      <Show when={props.state.desk.original()}>
        <button type="button" class="plain" onClick={() => props.state.startOver()}>
          {e.startOver}
        </button>
      </Show>
      <Show when={props.state.desk.isOwn()}>
        <button type="button" class="plain" onClick={() => props.state.remove()}>
          {e.remove}
        </button>
      </Show>
      <button type="button" class="plain" aria-expanded={props.guide} onClick={() => props.onGuide()}>
        {e.help}
      </button>
      <button type="button" class="plain" onClick={open}>
        {e.open}
      </button>
      <button type="button" class="plain" onClick={() => props.state.keepWithSkill()}>
        {e.keepWithSkill}
      </button>
      <button type="button" class="plain" onClick={save}>
        {e.save}
      </button>
      <button type="button" class="plain" onClick={() => write('csv')}>
        {e.csv}
      </button>
      <button type="button" class="plain" onClick={() => write('page')}>
        {e.print}
      </button>
    </div>
  );
}
