/** A summary in words and numbers, for a terminal or a page of text. Unsigned numbers with their words. */
import { DEG, REV } from '../math/angles.ts';
import { listCautions } from './caution-list.ts';
import { wordInstant } from './caution-words.ts';
import { TORQUE_WARNED, warnedSpeed } from './known-strength.ts';
import type { JointPeak, Summary } from './summary.ts';
import { isLeanWanted } from './target.ts';
import { LEAST_TILT, wordAngle } from './words.ts';

/** A rate under this, rad/s, is not worth a line. */
const LEAST_RATE = 0.005 * REV;

/** "upright", "leaning 12 deg forward", "head down" */
function wordLean(lean: number, decimals: number): string {
  const deg = Math.abs(lean * DEG);
  if (deg < 0.5) return 'upright';
  if (deg > 179.5) return 'head down';
  return `leaning ${deg.toFixed(decimals)} deg ${lean > 0 ? 'back' : 'forward'}`;
}

/** The whole summary, without the standing caution; `sentence` is its result, `named` what the skill is called at its place. */
export function formatSummary(
  title: string,
  sentence: string,
  s: Summary,
  named?: [what: string, text: string],
): string {
  const rows: [string, string][] = [
    [
      'athlete',
      `${s.body.name}, ${s.body.mass.toFixed(1)} kg${s.body.stature ? `, ${s.body.stature.toFixed(2)} m` : ''}${s.body.age === undefined ? '' : `, ${s.body.age} years`}`,
    ],
    ...(s.body.notes ?? []).map((note): [string, string] => ['body', note]),
    [
      'somersault',
      `${turned(s.somersaults, s.somersaultWord)}${wanted(s.target?.somersaults, s.target?.somersaultWord)}`,
    ],
    [
      'twist',
      `${turned(s.twists, s.twistWord && `to the ${s.twistWord}`)}${wanted(s.target?.twists, s.target?.twistWord)}`,
    ],
    [
      'in the air',
      `${s.duration.toFixed(4)} s${s.touchedBy ? `, touches down with ${s.touchedBy}` : s.isToRail ? ', until the hands are at the rail' : ', as long as stated'}`,
    ],
    ...landingRows(s),
    ...(named ? [named] : []),
    ['highest', `mass centre at ${s.height.value.toFixed(3)} m, ${s.height.t.toFixed(3)} s after take-off`],
    ...peakRows(s),
    [
      'angular momentum',
      `${hypot(s.h_Scm_W).toFixed(2)} kg·m²/s (x ${f(s.h_Scm_W[0])}, y ${f(s.h_Scm_W[1])}, z ${f(s.h_Scm_W[2])})`,
    ],
    ['joints', `${s.jointWork >= 0 ? 'put in' : 'took out'} ${Math.abs(s.jointWork).toFixed(1)} J since take-off`],
    ...jointRows(s),
  ];
  const width = Math.max(...rows.map(([name]) => name.length));
  const table = rows.map(([name, text]) => `  ${name.padEnd(width)}  ${text}`);
  return `${[title, sentence, '', ...table, '', ...cautionLines(s)].join('\n')}\n`;
}

const f = (x: number): string => (Math.abs(x) < 0.005 ? 0 : x).toFixed(2);
const hypot = (v: readonly number[]): number => Math.hypot(...v);

function turned(n: number | undefined, word: string): string {
  if (n === undefined) return 'not defined';
  return `${n.toFixed(3)} rev${word ? ` ${word}` : ''}`;
}

function wanted(n: number | undefined, word: string | undefined): string {
  if (n === undefined) return '';
  return ` (wanted ${n}${word ? ` ${word}` : ''})`;
}

function landingRows(s: Summary): [string, string][] {
  if (!s.landing || s.tilt === undefined) return [];
  const { landing } = s;
  const end = s.lands ? (landing.inverted ? 'entry' : 'landing') : 'end';
  const off = `${Math.abs(landing.short * DEG).toFixed(1)} deg`;
  const isLean = isLeanWanted(s.target);
  const lean = `${wordLean(landing.lean, 0)}${isLean ? ' from upright' : ''}`;
  const how = !s.somersaultWord
    ? wordLean(landing.lean, 1)
    : landing.word
      ? `${off} ${landing.word}${isLean ? ` of the lean wanted, ${lean}` : ''}`
      : `at the angle wanted (within ${off}), ${lean}`;
  return [
    [end, `${how}; tilt ${Math.abs(s.tilt * DEG).toFixed(1)} deg${s.tiltWord ? `, head to the ${s.tiltWord}` : ''}`],
  ];
}

function peakRows(s: Summary): [string, string][] {
  const rate = (name: string, peak: Summary['twistRate']): [string, string][] =>
    peak && Math.abs(peak.value) > LEAST_RATE
      ? [[name, `${Math.abs(peak.value / REV).toFixed(2)} rev/s at ${peak.t.toFixed(3)} s`]]
      : [];
  return [
    ...rate('fastest somersault', s.somersaultRate),
    ...rate('fastest twist', s.twistRate),
    ...(s.greatestTilt && Math.abs(s.greatestTilt.value) > LEAST_TILT
      ? ([
          [
            'greatest tilt',
            `${Math.abs(s.greatestTilt.value * DEG).toFixed(1)} deg at ${s.greatestTilt.t.toFixed(3)} s, from the vertical plane of travel`,
          ],
        ] as [string, string][])
      : []),
  ];
}

function jointRows(s: Summary): [string, string][] {
  const row = (
    name: string,
    peak: JointPeak | undefined,
    unit: string,
    scale: number,
    warned: number,
  ): [string, string][] => {
    if (!peak) return [];
    const from = Math.abs(peak.value) > peak.limit ? ` (cautioned from ${warned} times on)` : '';
    const limit = Number.isFinite(peak.limit)
      ? `; known ${(peak.limit * scale).toFixed(0)} ${unit}${from}, ${peak.source}`
      : '';
    const joint = wordAngle(s.body, s.body.angles[peak.angle]);
    return [[name, `${joint}, ${Math.abs(peak.value * scale).toFixed(0)} ${unit} at ${peak.t.toFixed(3)} s${limit}`]];
  };
  return [
    ...row('fastest joint', s.fastest, 'deg/s', DEG, warnedSpeed(1)),
    ...row('largest torque', s.strongest, 'N·m', 1, TORQUE_WARNED),
  ];
}

function cautionLines(s: Summary): string[] {
  const { body } = s;
  if (body.angles.length === 0) return ['This body has no joints.'];
  const young = s.notCompared;
  const notCompared = young ? [`${young.title} ${young.detail}`] : [];
  const list = listCautions(body, s.cautions);
  if (list.length === 0)
    return [
      ...notCompared,
      young
        ? 'In the air nothing is beyond the ranges of the joints.'
        : `No cautions in the air: nothing is beyond the ranges of the joints, ${warnedSpeed(1)} times their known speeds or ${TORQUE_WARNED} times their known strengths.`,
    ];
  const sources = new Set(list.map(({ caution }) => caution.source));
  return [
    ...notCompared,
    'Cautions (nothing is blocked by them):',
    ...list.flatMap(({ title, detail, caution }) => [`  ${title}`, `    ${detail} ${wordInstant(caution)}`]),
    ...[...sources].map((source) => `  known from: ${source}`),
  ];
}
