/** All together: tries as marks, twist against landing, and the share that lands. */
import { createEffect, For, Show } from 'solid-js';
import type { ReflexShare, ShareAfter } from '../../../sim/index.ts';
import { usePalette } from '../../app/plot/plot-canvas.tsx';
import { formatNumber } from '../../ui/numbers.ts';
import { percent } from './ask-words.ts';
import type { StudyState } from './study-state.ts';
import { drawTries } from './tries-draw.ts';
import { askTexts as t } from './words.ts';

type Props = { study: StudyState };

/** A skill to be held straight: no share heads the list, since none is what an athlete lands. */
function ReflexShares(props: { open: ShareAfter; reflex: readonly ReflexShare[]; isRanging: boolean }) {
  const row = (name: string, share: ShareAfter) => (
    <li>
      {name}: {t.rangeShare(percent(share.share), percent(share.interval[0]), percent(share.interval[1]))}
    </li>
  );
  return (
    <div class="reflex-shares" data-testid="reflex-range">
      <p>{t.heldStraight}</p>
      <ul>
        {row(t.openLoop, props.open)}
        <For each={props.reflex}>{({ delay, share }) => row(t.reflexAfter(formatNumber(delay, 2)), share)}</For>
        <Show when={props.isRanging}>
          <li class="quiet">{t.reflexComes}</li>
        </Show>
      </ul>
      <p class="quiet">{t.reflexNote}</p>
    </div>
  );
}

/** Twist against landing, one mark a try. */
export function Tries(props: Props & { width: number; height: number }) {
  let canvas!: HTMLCanvasElement;
  const palette = usePalette();
  const report = () => props.study.report();
  createEffect(() => {
    const one = report();
    drawTries(canvas, props.width, props.height, palette(), one, props.study.stale());
  });
  const share = () => report()?.share;
  return (
    <section class="ask-tries" classList={{ stale: props.study.stale() }}>
      <h3>
        {t.tries(String(report()?.share?.n ?? props.study.tries()))}{' '}
        <span class="quiet">{t.triesHow(report()?.balanced ? t.on : t.off)}</span>
      </h3>
      <canvas
        ref={canvas}
        role="img"
        aria-label={t.picture(String(share()?.n ?? 0), percent(share()?.share ?? 0))}
        style={{ width: `${props.width}px`, height: `${props.height}px` }}
      />
      <TriesShare study={props.study} />
    </section>
  );
}

/** The share that lands, with its interval; more tries at a press. */
export function TriesShare(props: Props) {
  const report = () => props.study.report();
  return (
    <Show when={report()?.share}>
      {(s) => (
        <>
          <Show when={report()?.reflex}>
            {(reflex) => <ReflexShares open={s()} reflex={reflex()} isRanging={props.study.isRanging()} />}
          </Show>
          <p class="tries-share" data-testid="share" hidden={report()?.reflex !== undefined}>
            <b>{t.share(percent(s().share), t.windows[report()?.kind ?? 'usual'])}</b>{' '}
            <span class="quiet">{t.interval(percent(s().interval[0]), percent(s().interval[1]))}</span>
          </p>
          <Show when={report()?.reflex === undefined}>
            <span class="share-line" aria-hidden="true">
              <i
                class="range"
                style={{ left: `${100 * s().interval[0]}%`, right: `${100 - 100 * s().interval[1]}%` }}
              />
              <i class="mark" style={{ left: `${100 * s().share}%` }} />
              <Show when={props.study.other()}>
                {(o) => <i class="other" style={{ left: `${100 * o().share}%` }} />}
              </Show>
            </span>
          </Show>
          <p class="quiet tries-foot">
            <Show when={props.study.other()}>
              {(o) => <>{`${t.triesHow(o().balanced ? t.on : t.off)} ${percent(o().share)} % · `}</>}
            </Show>
            <Show when={report()?.reflex === undefined && report()?.result?.formerly}>
              {(former) => <>{t.formerly(percent(former().share))} · </>}
            </Show>
            <Show when={(report()?.result?.settled.length ?? 0) > 1}>
              {t.settled(
                (report()?.result?.settled ?? [])
                  .map((one) => t.settledOne(String(one.n), percent(one.share)))
                  .join(', '),
              )}
              {' · '}
            </Show>
            <Show when={report()?.result?.faults}>{(n) => <>{t.faults(String(n()))} · </>}</Show>
            <button
              type="button"
              class="small"
              onClick={() => props.study.setTries(props.study.tries() === 100 ? 1000 : 100)}
            >
              {props.study.tries() === 100 ? t.moreTries : t.fewerTries}
            </button>
          </p>
        </>
      )}
    </Show>
  );
}
