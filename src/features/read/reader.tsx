/**
 * Lessons and glossary beside the bench: a sheet that leaves the page as it is, so that a lesson is followed while it is read. Its links stay in it;
 * the keys of the bench rest while the keyboard is in it, and Escape closes it.
 */
import {
  createEffect,
  createMemo,
  createSignal,
  For,
  type JSX,
  Match,
  on,
  onCleanup,
  onMount,
  Show,
  Switch,
} from 'solid-js';
import { Dynamic } from 'solid-js/web';
import { useShell } from '../../app/page.ts';
import type { ReadPlace } from '../../app/reading.ts';
import { texts } from '../../app/words.ts';
import { Icon } from '../../ui/icon.tsx';
import { type Block, type Inline, slugOf } from './markdown.ts';
import { blocksOf, placeOf, titleOf } from './pages.ts';
import { readTexts as t } from './words.ts';
import './read.css';

export function Reader(props: { place: ReadPlace }) {
  const shell = useShell();
  const [isLeft, setLeft] = createSignal(false);
  let panel!: HTMLElement;
  let body!: HTMLDivElement;
  const blocks = createMemo(() => blocksOf(props.place.page));
  const opener = document.activeElement;
  onMount(() => {
    onCleanup(() => {
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus();
    });
  });
  createEffect(
    on(
      () => props.place,
      ({ at }) => {
        const target = at ? body.querySelector<HTMLElement>(`[id="${idOf(at)}"]`) : undefined;
        body.scrollTop = 0;
        (target ?? panel.querySelector<HTMLElement>('h2'))?.focus({ preventScroll: true });
        target?.scrollIntoView({ block: 'start' });
      },
    ),
  );
  const onKeyDown = (e: KeyboardEvent): void => {
    if (e.ctrlKey || e.metaKey) return;
    e.stopPropagation();
    if (e.key !== 'Escape') return;
    e.preventDefault();
    shell.read(undefined);
  };
  const contents = createMemo(() =>
    blocks().filter((block) => block.kind === 'heading' && block.level > 1 && block.level < 4),
  );
  return (
    <section ref={panel} class="reader" classList={{ left: isLeft() }} aria-label={t.label} onKeyDown={onKeyDown}>
      <header>
        <h2 tabIndex={-1}>{titleOf(props.place.page)}</h2>
        <button type="button" class="plain small reader-side" onClick={() => setLeft(!isLeft())}>
          {t.side}
        </button>
        <button type="button" class="plain square" aria-label={t.close} onClick={() => shell.read(undefined)}>
          <Icon name="close" />
        </button>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keyboard */}
      <div class="reader-body" ref={body} tabIndex={0} role="document" aria-label={titleOf(props.place.page)}>
        <nav aria-label={t.label}>
          <Show when={props.place.page !== 'lessons'}>
            <button type="button" class="link" onClick={() => shell.read({ page: 'lessons' })}>
              {t.all}
            </button>
          </Show>
          <Show when={props.place.page !== 'glossary'}>
            <button type="button" class="link" onClick={() => shell.read({ page: 'glossary' })}>
              {t.glossary}
            </button>
          </Show>
        </nav>
        <Show when={contents().length > 1}>
          <nav aria-label={t.contents}>
            <For each={contents()}>
              {(block) => (
                <Show when={block.kind === 'heading' && block}>
                  {(heading) => (
                    <button
                      type="button"
                      class="link"
                      onClick={() => shell.read({ page: props.place.page, at: heading().slug })}
                    >
                      {heading().text}
                    </button>
                  )}
                </Show>
              )}
            </For>
          </nav>
        </Show>
        <For each={blocks().slice(1)}>{(block) => <BlockView block={block} page={props.place.page} />}</For>
        <p class="standing">{texts.standingCaution}</p>
      </div>
    </section>
  );
}

/** Ids of the reader are apart from those of the bench. */
const idOf = (slug: string): string => `read-${slug}`;

function BlockView(props: { block: Block; page: ReadPlace['page'] }): JSX.Element {
  const line = (all: readonly Inline[]): JSX.Element => (
    <For each={all}>{(one) => <InlineView one={one} page={props.page} />}</For>
  );
  return (
    <Switch>
      <Match when={props.block.kind === 'heading' && props.block}>
        {(heading) => (
          <Dynamic component={heading().level === 2 ? 'h3' : 'h4'} id={idOf(heading().slug)} tabIndex={-1}>
            {heading().text}
          </Dynamic>
        )}
      </Match>
      <Match when={props.block.kind === 'paragraph' && props.block}>{(one) => <p>{line(one().line)}</p>}</Match>
      <Match when={props.block.kind === 'list' && props.block}>
        {(list) => (
          <Dynamic component={list().ordered ? 'ol' : 'ul'}>
            <For each={list().items}>{(item) => <li>{line(item)}</li>}</For>
          </Dynamic>
        )}
      </Match>
      <Match when={props.block.kind === 'table' && props.block}>
        {(table) => (
          <dl class="reader-table">
            <For each={table().rows}>
              {([first, ...rest]) => (
                <div>
                  <dt id={idOf(slugOf(first.map(({ text }) => text).join('')))} tabIndex={-1}>
                    {line(first)}
                  </dt>
                  <For each={rest}>
                    {(cell, i) => (
                      <Show when={cell.length > 0}>
                        <dd>
                          <Show when={i() > 0}>
                            <span class="quiet">{table().head[i() + 1]}: </span>
                          </Show>
                          {line(cell)}
                        </dd>
                      </Show>
                    )}
                  </For>
                </div>
              )}
            </For>
          </dl>
        )}
      </Match>
    </Switch>
  );
}

function InlineView(props: { one: Inline; page: ReadPlace['page'] }): JSX.Element {
  const shell = useShell();
  const to = (): ReadPlace | undefined => (props.one.kind === 'link' ? placeOf(props.page, props.one.href) : undefined);
  return (
    <Switch fallback={props.one.text}>
      <Match when={to()}>
        {(place) => (
          <button type="button" class="link" onClick={() => shell.read(place())}>
            {props.one.text}
          </button>
        )}
      </Match>
      <Match when={props.one.kind === 'bold'}>
        <b>{props.one.text}</b>
      </Match>
      <Match when={props.one.kind === 'em'}>
        <em>{props.one.text}</em>
      </Match>
      <Match when={props.one.kind === 'code'}>
        <code>{props.one.text}</code>
      </Match>
    </Switch>
  );
}
