/** When the landing can be seen, on the ruler: a strip of words, and in a sentence what it comes to. */

import { createMemo, For, Show } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import { useCursor } from '../../app/page.ts';
import { calcPlace, readAt } from '../../app/plot/readout.ts';
import { TouchPlumb } from '../../app/plot/touch-plumb.tsx';
import type { SightResult } from '../../engine/account.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { type TimeAxis, tOf, xOf } from '../../ui/plot/axis.ts';
import { putBeside } from '../../ui/plot/beside-line.ts';
import { startScrub } from '../../ui/scrub.ts';
import type { AccountState } from './account-state.ts';
import { accountTexts as a } from './words.ts';

/** px a letter of the strip takes */
const LETTER = 6.6;
/** s: nothing is said of less */
const SHORT = 0.005;

function sayWhen(sight: SightResult): string {
  const end = sight.spans.at(-1)?.to ?? 0;
  const two = (s: number): string => formatNumber(s, 2);
  if (sight.firstBefore === undefined) return a.seenNever;
  if (sight.share > 0.999) return a.seenAlways;
  const first = a.seenFirst(two(end - sight.firstBefore), two(sight.firstBefore));
  if (sight.lastBefore === undefined) return `${first} ${a.seenNotAtEnd}`;
  const last = a.seenFrom(two(end - sight.lastBefore), two(sight.lastBefore));
  return sight.firstBefore - sight.lastBefore > SHORT ? `${first} ${last}` : last;
}

function sayNow(sight: SightResult, t: number): string {
  const span = sight.spans.find((s) => t <= s.to) ?? sight.spans.at(-1);
  if (!span) return '';
  if (span.why !== 'seen') return a.notNow(a.whyLong[span.why]);
  const place = calcPlace({ t: sight.t, n: sight.t.length } as Parameters<typeof calcPlace>[0], t);
  const side = readAt(sight.side, place) * DEG;
  const up = readAt(sight.up, place) * DEG;
  const deg = (v: number): string => `${formatNumber(Math.abs(v), 0)}°`;
  return a.seenNow(a.aside(deg(side), side > 0 ? a.right : a.left), a.upDown(deg(up), up > 0 ? a.above : a.below));
}

export function SightStrip(props: { state: AccountState; axis: TimeAxis; left: number; tall: number }) {
  const cursor = useCursor();
  const sight = createMemo(() => {
    const s = props.state.sight();
    return s === 'none' ? undefined : s;
  });
  const words = (why: SightResult['spans'][number]['why']): string => (why === 'seen' ? a.seen : a.why[why]);
  const press = (e: PointerEvent): void => startScrub(e, cursor, (x) => tOf(props.axis, x));
  return (
    <div
      class="sight"
      style={{ 'margin-left': props.left > 0 ? `${props.left}px` : undefined, width: `${props.axis.width}px` }}
    >
      <Show
        when={sight()}
        fallback={<p class="quiet sight-said">{props.state.sight() === 'none' ? a.noHead : a.working('0', '–')}</p>}
      >
        {(s) => (
          <>
            <div
              class="sight-strip"
              style={{ height: `${props.tall}px` }}
              role="img"
              aria-label={a.sightPicture(
                s()
                  .spans.filter((one) => one.to - one.from > SHORT)
                  .map((one) => a.span(words(one.why), formatNumber(one.from, 2), formatNumber(one.to, 2)))
                  .join(', '),
              )}
              onPointerDown={press}
            >
              <For each={s().spans}>
                {(one) => {
                  const width = (): number => (one.to - one.from) * props.axis.pxPerS;
                  const plumb = (): number => xOf(props.axis, cursor.at()) - xOf(props.axis, one.from);
                  const said = createMemo(() => {
                    for (const text of [words(one.why), a.short[one.why]]) {
                      const long = text.length * LETTER;
                      const x = putBeside((width() - long) / 2, long, width(), plumb());
                      if (x !== undefined) return { text, x };
                    }
                    return { text: '', x: 0 };
                  });
                  return (
                    <span
                      class="sight-span"
                      classList={{ seen: one.why === 'seen' }}
                      data-why={one.why}
                      title={words(one.why)}
                      style={{ left: `${xOf(props.axis, one.from)}px`, width: `${width()}px` }}
                    >
                      <span style={{ 'margin-left': `${said().x}px` }}>{said().text}</span>
                    </span>
                  );
                }}
              </For>
              <TouchPlumb axis={props.axis} />
            </div>
            <p class="sight-said" style={{ 'padding-left': `${props.axis.x0}px` }}>
              {sayWhen(s())} <span class="quiet">{sayNow(s(), cursor.at())}</span>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
