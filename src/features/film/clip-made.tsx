/** What it takes to do this: the posed frames under their pegs, what is known of them, and what came of flying them. */
import { createMemo, For, Show } from 'solid-js';
import type { PosedFrame } from '../../../sim/index.ts';
import { useFlight } from '../../app/page.ts';
import { formatNumber } from '../../ui/numbers.ts';
import type { ClipPosing } from './clip-pose-state.ts';
import { ClipPoseTools, ClipPoseWork } from './clip-pose-tools.tsx';
import { clipPoseTexts as t, wordPosedCaution } from './clip-pose-words.ts';
import './clip-pose.css';

/** px */
const TALL = 74;
const WIDE = 64;
const PX_PER_M = 30;
const DEG = 180 / Math.PI;

export function ClipMade(props: { posing: ClipPosing }) {
  const list = () => props.posing.posed();
  const span = createMemo(() => {
    const [a, b] = [list()[0]?.t ?? 0, list().at(-1)?.t ?? 1];
    return { from: a, by: Math.max(b - a, 1e-3) };
  });
  /** share of the width, the half of a figure off both edges */
  const at = (p: PosedFrame, i: number): number => {
    const n = list().length;
    if (n < 2) return 50;
    const true_ = (p.t - span().from) / span().by;
    // figures keep apart where frames are near each other
    const even = i / (n - 1);
    return 9 + 82 * (n > 5 ? even : 0.35 * true_ + 0.65 * even);
  };
  return (
    <section class="clip-made" aria-label={t.title}>
      <h3>{t.title}</h3>
      <p class="quiet">{t.explain(list().length)}</p>
      <Show when={props.posing.isOn() && props.posing.here()}>
        {(here) => <ClipPoseTools posing={props.posing} here={here()} />}
      </Show>
      <Show when={list().length > 0}>
        <ol class="clip-posed">
          <For each={list()}>
            {(p, i) => (
              <li style={{ left: `${at(p, i())}%` }}>
                <Posed posing={props.posing} posed={p} />
              </li>
            )}
          </For>
        </ol>
        <PosedRows posing={props.posing} />
      </Show>
      <ClipPoseWork posing={props.posing} />
      <Show when={props.posing.made()}>
        {(made) => (
          <Show when={made().flown.cautions.some(({ kind }) => kind !== 'sides')}>
            <ul class="clip-posed-cautions" aria-label={t.cautionTitle}>
              <For each={made().flown.cautions.filter(({ kind }) => kind !== 'sides')}>
                {(caution) => <li>{wordPosedCaution(caution, formatNumber)}</li>}
              </For>
            </ul>
          </Show>
        )}
      </Show>
    </section>
  );
}

function Posed(props: { posing: ClipPosing; posed: PosedFrame }) {
  const flight = useFlight();
  const small = createMemo((): string => {
    const [room, sight] = [props.posing.desk.room(), props.posing.desk.sight()];
    return room && sight
      ? room.posedPictures.small(flight.result(), props.posed, sight, WIDE / 2, TALL / 2, PX_PER_M)
      : '';
  });
  const s = (): string => formatNumber(props.posed.t, 2);
  return (
    <button
      type="button"
      class="clip-posed-one"
      aria-label={t.goTo(s())}
      aria-current={props.posing.desk.frame() === props.posed.frame}
      onClick={() => props.posing.desk.setFrame(props.posed.frame)}
    >
      <span>{s()}</span>
      <i />
      {/* eslint-disable-next-line solid/no-innerhtml -- our own picture of numbers: no text of a file is in it */}
      <svg width={WIDE} height={TALL} aria-hidden="true" innerHTML={small()} />
    </button>
  );
}

function PosedRows(props: { posing: ClipPosing }) {
  const share = (): number => props.posing.desk.room()?.posings.limbs(props.posing.posed()) ?? Number.NaN;
  const limbs = (): string => {
    if (Number.isNaN(share())) return t.limbsUnknown;
    const percent = formatNumber(100 * Math.abs(share()), 0);
    return share() > 0.02 ? t.longer(percent) : t.within(String(Math.max(2, Number(percent))));
  };
  const open = (): PosedFrame | undefined => props.posing.open()[0];
  return (
    <dl>
      <div>
        <dt>{t.rows.limbs}</dt>
        <dd>{limbs()}</dd>
      </div>
      <div>
        <dt>{t.rows.sides}</dt>
        <dd>
          <Show when={open()} fallback={t.sidesSeen}>
            {(p) => (
              <>
                <b>{t.sidesOpen(formatNumber(p().t, 2))}</b>{' '}
                <button type="button" class="link" onClick={() => props.posing.swap(p())}>
                  {t.swap}
                </button>
              </>
            )}
          </Show>
        </dd>
      </div>
      <Show when={props.posing.made()}>
        {(made) => (
          <>
            <div>
              <dt>{t.madeRow(made().letter)}</dt>
              <dd>
                <b>{formatNumber(made().flown.left * DEG, 1)}°</b> {t.rows.left.toLowerCase()}
              </dd>
            </div>
            <div>
              <dt>{t.rows.momentum}</dt>
              <dd>
                <b>{formatNumber(Math.abs(made().flown.momentum.value), 1)}</b> ±{' '}
                {formatNumber(made().flown.momentum.plusMinus, 1)} kg·m²/s
              </dd>
            </div>
          </>
        )}
      </Show>
    </dl>
  );
}
