/** What a study or a map came to, as JSON in the units people type; null is "not defined". */

import type { FromTo } from '../math/from-to.ts';
import { jsonText } from '../math/json-text.ts';
import { OUT_UNITS } from '../math/out-units.ts';
import type { MapRow, MapSpec } from '../search/map.ts';
import type { Contour } from '../search/map-contour.ts';
import type { Bar, BarEnd } from '../search/margin-bars.ts';
import type { MarginStudy, ShareAfter } from '../search/margin-study.ts';
import type { Bound } from '../search/margin-window.ts';
import type { ReflexRange } from '../search/reflex-range.ts';
import type { Study } from '../search/sample.ts';
import type { ErrorSetting } from '../search/usual-error.ts';
import { CAUTION, COMPARED } from './caution.ts';
import type { Provenance } from './provenance.ts';

const MARGIN_FORMAT = 'shapeflight-margin';
const MAP_FORMAT = 'shapeflight-map';

const finite = (x: number): number | null => (Number.isFinite(x) ? x : null);

const shareOut = ({ n, hits, share, interval }: ShareAfter): object => ({
  n,
  inside: hits,
  share,
  interval95: interval,
});

const windowOut = (bounds: readonly Bound[]): object[] =>
  bounds.map(({ result, low, high }) => {
    const { scale, suffix } = OUT_UNITS[result.unit];
    return { result: result.id, unit: suffix, low: low * scale, high: high * scale };
  });

interface StudyOut extends FromTo {
  readonly title: string;
  readonly provenance: Provenance;
  readonly study: Study;
  /** the reflex in words */
  readonly balance: string;
  readonly now: readonly number[];
  readonly bars: readonly Bar[];
  readonly result: MarginStudy;
  /** whose errors, and times what */
  readonly errors: ErrorSetting;
  /** of a skill that is to be held straight */
  readonly range?: ReflexRange;
  /** which of them go together, in one sentence */
  readonly together: string;
  /** where the errors are from */
  readonly sources: readonly { readonly source: string; readonly inputs: readonly string[] }[];
}

/** A study as the text of a JSON file, units of people; fields: docs/outputs.md. */
export function formatMarginJson(out: StudyOut): string {
  const { title, provenance, study, balance, from, to, now, bars, result, errors, range, together, sources } = out;
  const { parts, correlations } = study.spread;
  const unitOf = (id: string): (typeof OUT_UNITS)[keyof typeof OUT_UNITS] | undefined => {
    const part = parts.find((p) => p.input.id === id);
    return part && OUT_UNITS[part.input.unit];
  };
  const end = (e: BarEnd, scale: number): object => ({
    by: e.by * scale,
    ends: e.ends,
    ...(e.result === undefined ? {} : { result: e.result }),
    ...(e.fault === undefined ? {} : { fault: e.fault }),
  });
  const scaled = (values: readonly number[]): object =>
    Object.fromEntries(
      study.window.map(({ result: r }, k) => [
        `${r.id}_${OUT_UNITS[r.unit].suffix}`,
        finite((values[k] ?? Number.NaN) * OUT_UNITS[r.unit].scale),
      ]),
    );
  const plain = (values: readonly number[]): object =>
    Object.fromEntries(study.window.map(({ result: r }, k) => [r.id, finite(values[k] ?? Number.NaN)]));
  const file = {
    format: MARGIN_FORMAT,
    version: 1,
    provenance,
    caution: CAUTION,
    compared: COMPARED,
    title,
    balance,
    seed: study.seed,
    samples: { from, to, couldNotBeFlown: result.faults },
    window: windowOut(study.window),
    asItIs: scaled(now),
    vary: parts.map(({ input, by, kind }) => {
      const { scale, suffix } = OUT_UNITS[input.unit];
      const source = sources.find((s) => s.inputs.includes(input.id))?.source;
      const value = input.value * scale;
      return { input: input.id, label: input.label, unit: suffix, value, by: by * scale, kind, source };
    }),
    usualErrors: errors,
    correlations,
    goesTogether: together,
    inWindow: shareOut(result.now),
    ...(range
      ? {
          heldStraight: {
            openLoop: shareOut(range.openLoop),
            hipsReflex: range.reflex.map(({ delay, share }) => ({ delayS: delay, ...shareOut(share) })),
            note: range.note,
          },
        }
      : {}),
    ...(result.formerly ? { inFormerWindow: shareOut(result.formerly) } : {}),
    settled: result.settled.map(shareOut),
    mean: scaled(result.mean),
    deviation: scaled(result.deviation),
    linearShare: plain(result.linear),
    bars: bars.map((b) => {
      const scale = unitOf(b.input)?.scale ?? 1;
      return {
        input: b.input,
        unit: unitOf(b.input)?.suffix ?? '',
        low: end(b.low, scale),
        high: end(b.high, scale),
        forgives: finite(b.forgives),
      };
    }),
    influences: result.influences.map((i) => ({
      input: parts[i.part].input.id,
      share: i.share,
      effects: plain(i.effects),
      ranks: plain(i.ranks),
    })),
  };
  return `${jsonText(file)}\n`;
}

interface MapOut {
  readonly title: string;
  readonly provenance: Provenance;
  readonly map: MapSpec;
  readonly balance: string;
  readonly from: number;
  readonly rows: readonly MapRow[];
  readonly contours: readonly { readonly result: string; readonly contours: readonly Contour[] }[];
  readonly placeOf: (axis: MapSpec['x'], index: number) => number;
}

/** A map as the text of a JSON file, units of people; fields: docs/outputs.md. */
export function formatMapJson({ title, provenance, map, balance, from, rows, contours, placeOf }: MapOut): string {
  const { x, y, results, window: bounds } = map;
  const axis = (a: MapSpec['x']): object => {
    const { scale, suffix } = OUT_UNITS[a.input.unit];
    return {
      input: a.input.id,
      label: a.input.label,
      unit: suffix,
      now: a.input.value * scale,
      values: Array.from({ length: a.count }, (_, i) => placeOf(a, i) * scale),
    };
  };
  const file = {
    format: MAP_FORMAT,
    version: 1,
    provenance,
    caution: CAUTION,
    compared: COMPARED,
    title,
    balance,
    x: axis(x),
    y: axis(y),
    firstRow: from,
    results: results.map((r, k) => {
      const { scale, suffix } = OUT_UNITS[r.unit];
      return {
        result: r.id,
        unit: suffix,
        rows: rows.map((row) =>
          Array.from(row.values.subarray(k * x.count, (k + 1) * x.count), (v) => finite(v * scale)),
        ),
        contours: (contours.find((c) => c.result === r.id)?.contours ?? []).map((c) => ({
          level: c.level * scale,
          // pairs of x and y in the units of the axes
          lines: c.lines.map((line) => linePlaces(line, map, from)),
        })),
      };
    }),
    ...(bounds ? { window: windowOut(bounds), distance: rows.map((row) => Array.from(row.distance, finite)) } : {}),
  };
  return `${JSON.stringify(file)}\n`;
}

function linePlaces(line: readonly number[], { x, y }: MapSpec, from: number): number[] {
  const at = (a: MapSpec['x'], i: number): number =>
    (a.from + ((a.to - a.from) * i) / (a.count - 1)) * OUT_UNITS[a.input.unit].scale;
  return line.map((v, k) => (k % 2 === 0 ? at(x, v) : at(y, from + v)));
}
