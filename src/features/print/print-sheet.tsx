/** The print sheet: one A4 page on its side, black and grey. What is shown is what is printed; files are made from it too. */
import { createMemo, createResource, createSignal, For, onCleanup, onMount, Show } from 'solid-js';
import { NoticeLine } from '../../app/notice-line.tsx';
import { usePage, useServices } from '../../app/page.ts';
import { makeContent, PAGE_WIDTH, type PrintContent } from '../../app/sheet-content.ts';
import { printTexts } from '../../app/sheet-words.ts';
import { texts } from '../../app/words.ts';
import { Icon } from '../../ui/icon.tsx';
import { saveCsv, savePicture } from './print-export.ts';

const t = printTexts;
const MARGIN = 46;
/** 210 mm less the margins of the page, CSS px, and a little for rounding */
const PAPER_HEIGHT = 736;

export function PrintSheet(props: { onClose: () => void }) {
  const services = useServices();
  const page = usePage();
  let dialog!: HTMLDialogElement;
  const [ports] = createResource(() => services.load.print());
  const [room, setRoom] = createSignal(PAGE_WIDTH + 2 * MARGIN);
  const content = createMemo<PrintContent | undefined>(() => {
    const given = ports();
    return given ? makeContent(page, given, new Date()) : undefined;
  });
  onMount(() => {
    dialog.showModal();
    const read = (): void => {
      setRoom(dialog.clientWidth);
    };
    read();
    const observer = new ResizeObserver(read);
    observer.observe(dialog);
    onCleanup(() => {
      observer.disconnect();
      dialog.close();
    });
  });
  // on a phone the page may be moved sideways: smaller than this nobody can read it
  const zoom = (): number => Math.min(1, Math.max(0.62, (room() - 24) / (PAGE_WIDTH + 2 * MARGIN)));
  return (
    <dialog
      ref={dialog}
      class="print-view"
      aria-label={t.title}
      onCancel={(e) => {
        e.preventDefault();
        props.onClose();
      }}
    >
      <header class="print-bar">
        <h2>{t.title}</h2>
        <p class="quiet">{t.hint}</p>
        <span class="gap" />
        <button type="button" onClick={() => print()}>
          {t.print}
        </button>
        <button type="button" onClick={() => void savePicture(page, 'svg')}>
          {t.svg}
        </button>
        <button type="button" onClick={() => void savePicture(page, 'png')}>
          {t.png}
        </button>
        <button type="button" onClick={() => void saveCsv(page)}>
          {t.csv}
        </button>
        <button type="button" class="plain square" aria-label={texts.files.dismiss} onClick={() => props.onClose()}>
          <Icon name="close" />
        </button>
      </header>
      <NoticeLine inSheet />
      {/* a region that scrolls must be reached by key */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls */}
      <section class="print-room" tabIndex={0} aria-label={t.title}>
        <Show when={content()}>{(page) => <Page content={page()} zoom={zoom()} tokens={ports()?.tokens ?? {}} />}</Show>
      </section>
    </dialog>
  );
}

function Page(props: { content: PrintContent; zoom: number; tokens: Readonly<Record<string, string>> }) {
  const colours = (): Record<string, string> =>
    Object.fromEntries(Object.entries(props.tokens).map(([name, value]) => [`--${name}`, value]));
  const c = (): PrintContent => props.content;
  const [shrink, setShrink] = createSignal(1);
  let page!: HTMLElement;
  // a sheet with long lines is made a little smaller on paper, so that it stays one sheet
  onMount(() => {
    // against its own width: the page may be shown smaller than it is
    const observer = new ResizeObserver(([{ contentRect }]) =>
      setShrink(Math.min(1, (PAPER_HEIGHT * contentRect.width) / (contentRect.height * PAGE_WIDTH))),
    );
    observer.observe(page);
    onCleanup(() => observer.disconnect());
  });
  return (
    <article
      ref={page}
      class="print-page"
      style={{ ...colours(), '--page-zoom': props.zoom, '--print-zoom': shrink() }}
    >
      <p class="print-head">
        <b>{c().skill}</b> {c().who}
        <span class="print-right">{[c().code, c().dated].filter(Boolean).join(' · ')}</span>
      </p>
      <h3 class="print-title">{c().sentence}</h3>
      <p class="print-start">
        {c().likelihood} {t.takeoff} {c().takeoff}.
        <Show when={c().caution}>
          {' '}
          <b>{t.caution}</b> {c().caution}
        </Show>
      </p>
      <svg
        class="print-picture"
        role="img"
        aria-label={t.strip}
        viewBox={`0 0 ${c().picture.width} ${c().picture.height}`}
        width={c().picture.width}
        height={c().picture.height}
        // eslint-disable-next-line solid/no-innerhtml -- our own drawing; its texts are escaped where it is made
        innerHTML={c().picture.markup}
      />
      <table class="print-table">
        <caption class="spoken">{t.table}</caption>
        <thead>
          <tr>
            <td />
            <For each={c().instants}>
              {(one) => (
                <th scope="col">
                  <b>{one.t.toFixed(2)} s</b>
                  <span>{one.name}</span>
                </th>
              )}
            </For>
          </tr>
        </thead>
        <tbody>
          <For each={c().rows}>
            {(row) => (
              <tr>
                <th scope="row">
                  {row.name}
                  {row.unit ? `, ${row.unit}` : ''}
                </th>
                <For each={row.cells}>{(cell) => <td>{cell}</td>}</For>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <p class="print-foot">
        {c().key} <span class="print-right">{texts.product}</span>
      </p>
      <p class="print-foot print-standing">
        {texts.compared} {texts.standingCaution}
      </p>
    </article>
  );
}
