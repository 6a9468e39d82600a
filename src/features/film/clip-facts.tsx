/** What is known of the clip: rate, size, reading line by line, scale, camera. What is corrected, typed, solved or not known is said. */
import { type JSX, Show } from 'solid-js';
import { DEG } from '../../../sim/math/angles.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, sayNumber, unitBeside } from '../../ui/units.ts';
import type { ClipDesk } from './clip-state.ts';
import { clipTexts as t } from './clip-words.ts';

/** rad: less is square on, as far as anybody sees */
const SQUARE = 0.5 / DEG;

export function ClipFacts(props: { desk: ClipDesk; height?: number }) {
  const facts = () => props.desk.clip()?.facts;
  const hz = (): number | undefined => props.desk.measuring().trueHz;
  const rate = (): [string, string] => {
    const now = hz();
    if (props.desk.isStill()) return [t.still, ''];
    if (now === undefined) return ['–', t.notAsked];
    const isAsFile = Math.abs(now - (facts()?.fileHz ?? 0)) < 0.01;
    return [
      t.hz(formatNumber(now, Math.abs(now - Math.round(now)) < 0.05 ? 0 : 2)),
      isAsFile ? t.fileRate : t.askedRate,
    ];
  };
  const lines = (): number | undefined => props.desk.measuring().lines;
  const scale = (): [string, string] => {
    const now = props.desk.measuring().scale;
    if (!now) return ['–', t.noScale];
    return now.kind === 'length'
      ? [say('length', now.lengthM), t.ofLength]
      : [`${formatNumber(now.widthM, 1)} × ${say('length', now.depthM, 1)}`, t.ofCorners];
  };
  const sight = () => props.desk.sight();
  const off = (): string => {
    const rad = sight()?.offSquare.value ?? Number.NaN;
    if (Number.isNaN(rad)) return t.offNotKnown;
    return Math.abs(rad) < SQUARE ? t.square : t.offSquare(sayDeg(rad, sight()?.offSquare.plusMinus));
  };
  const camera = (): [string, string] => {
    const now = sight();
    if (!now) return ['–', t.noCameraYet];
    const { value, plusMinus } = now.away;
    const error = Number.isFinite(plusMinus) ? ` ± ${sayNumber('length', Math.max(plusMinus, 0.1), 1)}` : '';
    const away = `${sayNumber('length', value, 1)}${error} ${unitBeside('length')}`;
    return [Number.isNaN(value) ? t.awayNotKnown : t.away(away), off()];
  };
  return (
    <section
      class="clip-facts"
      aria-label={t.facts}
      style={props.height === undefined ? {} : { height: `${props.height}px` }}
    >
      <h2>{t.facts}</h2>
      <dl>
        <Fact name={t.fact.frames} said={rate()}>
          <Show when={facts()?.kind === 'moving' && hz() !== undefined}>
            <button type="button" class="link" onClick={() => props.desk.askRate()}>
              {t.change}
            </button>
          </Show>
        </Fact>
        <Fact
          name={t.fact.size}
          said={[`${facts()?.width ?? 0} × ${facts()?.height ?? 0}`, facts()?.turnedDeg ? t.turned : t.upright]}
        />
        <Show when={!props.desk.isStill()}>
          <Fact
            name={t.fact.lines}
            said={lines() === undefined ? ['–', t.notCorrected] : ['', t.corrected]}
            first={<LinesField desk={props.desk} />}
          />
        </Show>
        <Fact name={t.fact.scale} said={scale()} />
        <Fact name={t.fact.camera} said={camera()} />
      </dl>
    </section>
  );
}

/** "14 ± 1°" */
export function sayDeg(rad: number, plusMinus = Number.NaN): string {
  const error = Number.isFinite(plusMinus) ? ` ± ${formatNumber(Math.max(plusMinus * DEG, 1), 0)}` : '';
  return `${formatNumber(Math.abs(rad) * DEG, 0)}${error}°`;
}

function Fact(props: { name: string; said: [string, string]; first?: JSX.Element; children?: JSX.Element }) {
  return (
    <div>
      <dt>{props.name}</dt>
      <dd>
        <Show when={props.first} fallback={<b>{props.said[0]}</b>}>
          {props.first}
        </Show>
        <small>
          {props.said[1]} {props.children}
        </small>
      </dd>
    </div>
  );
}

/** ms; empty: not known */
function LinesField(props: { desk: ClipDesk }) {
  const most = (): number => 1000 / (props.desk.frames()?.hz ?? 30);
  const shown = (): string => {
    const now = props.desk.measuring().lines;
    return now === undefined ? '' : formatNumber(1000 * now, 1);
  };
  const take = (input: HTMLInputElement): void => {
    const typed = input.value.trim().replace(',', '.');
    if (typed === '') props.desk.measure({ lines: undefined as never }, t.linesStep);
    else if (Number(typed) >= 0 && Number(typed) <= most())
      props.desk.measure({ lines: Number(typed) / 1000 }, t.linesStep);
    else {
      props.desk.opening.setFault(t.linesRange(input.value, formatNumber(most(), 1)));
      input.value = shown();
    }
  };
  return (
    <label class="clip-lines">
      <input
        inputmode="decimal"
        maxLength={40}
        aria-label={`${t.linesField}, ${t.ms}`}
        placeholder="?"
        value={shown()}
        onChange={(e) => take(e.currentTarget)}
      />{' '}
      {t.ms}
    </label>
  );
}
