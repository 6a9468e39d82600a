/** Swing, contact and landing of a whole skill in plain lines, for the command line. */

import type { EndingKind } from '../contact/ending.ts';
import type { LandingReport } from '../contact/landing-report.ts';
import { DEG } from '../math/angles.ts';
import type { ContactReport } from '../skill/contact-report.ts';
import type { SwingLoads } from '../skill/swing-loads.ts';
import type { Arrival, Whole } from '../skill/whole.ts';
import { wordNotComputed } from './basis-words.ts';
import { contactLines } from './contact-card.ts';
import { wordPossible } from './contact-words.ts';
import { BED_WORDS, BOUND_WORDS, wordReason } from './landing-words.ts';
import { ENDING_WORDS, wordDown } from './verdict-words.ts';

const cm = (m: number): string => `${(100 * m).toFixed(1)} cm`;
const ms = (s: number): string => `${(1000 * s).toFixed(0)} ms`;

const deg = (rad: number): string => `${(rad * DEG).toFixed(0)} deg`;

/** Lines, each with a word for its phase; empty for a flight alone. `report`: on the take-off; `loads`: of the swing. */
export function formatWhole(whole: Whole, report?: ContactReport, loads?: SwingLoads): string {
  const lines: string[] = [];
  const row = (word: string, text: string): void => {
    lines.push(`${word.padEnd(11)}${text}`);
  };
  const { swing, late, contact, landing } = whole;
  if (swing) {
    const { gripWeights, grip, bend, effort } = swing.peaks;
    const release = swing.stateAt(0);
    row(
      'Swing',
      `${swing.duration.toFixed(2)} s; grip at most ${grip.value.toFixed(0)} N (${gripWeights.value.toFixed(2)} body weights) ${(-grip.t).toFixed(2)} s before the release, rail bent ${cm(bend.value)}`,
    );
    row(
      'Release',
      `mass centre ${release.p_WScm_W[1].toFixed(2)} m up, speed ${Math.hypot(...release.v_WScm_W).toFixed(2)} m/s (${release.v_WScm_W[1].toFixed(2)} upward), angular momentum ${Math.abs(release.h).toFixed(1)} kg·m²/s`,
    );
    if (late)
      row(
        '',
        `the ${late.hand} hand holds on ${(1000 * late.held).toFixed(1)} ms longer: momentum ${late.h_Scm_W.map((h) => h.toFixed(2)).join(', ')} kg·m²/s (X, Y, Z)`,
      );
    const worst = effort.reduce((a, b) => (b.value > a.value ? b : a));
    const largest = loads?.largest.reduce((a, b) => (Math.abs(b.torque) > Math.abs(a.torque) ? b : a));
    const asked = loads?.notCompared
      ? `largest torque that of the ${largest?.joint}, ${Math.abs(largest?.torque ?? 0).toFixed(0)} N·m`
      : `most asked of the ${worst.joint}: ${worst.value.toFixed(2)} times what it can give there`;
    row(
      'Joints',
      `${swing.driven ? 'strength not checked' : `limited to ${swing.strength === 1 ? '' : `${swing.strength} times `}what adults of this size are known to have`}; ${asked}`,
    );
    if (loads?.notCompared) row('', `${loads.notCompared.title} ${loads.notCompared.detail}`);
    loads?.said.forEach(({ title, detail }, i) => {
      row('', `${title} ${detail} ${loads.instants[i]}`);
    });
  }
  if (contact) {
    const c = contact.impulse;
    row(
      'Contact',
      `${ms(contact.time)}, mean force ${c.force.toFixed(0)} N (${c.bodyWeights.toFixed(2)} body weights), ${deg(Math.abs(c.lean))} off the vertical, ${cm(Math.abs(c.lever))} past the mass centre`,
    );
    if (report) for (const line of contactLines(report)) row('', line);
    row(
      '',
      `friction needed ${c.frictionNeeded.toFixed(2)}; ${wordPossible(c.faults).join(', ')}${report && report.cautions.length > 0 ? '; outside what is known, see above' : ''}`,
    );
  }
  if (landing) for (const [word, text] of landingLines(landing, isBedOf(whole.skill))) row(word, text);
  return lines.length > 0 ? `${lines.join('\n')}\n` : '';
}

/** As `isIntoBed`, of which words import the types alone. */
const isBedOf = ({ end, after }: Whole['skill']): boolean =>
  end.surface?.kind === 'trampoline' && typeof after?.mat !== 'string';

function landingLines(landing: Arrival, isBed: boolean): [string, string][] {
  if (landing.kind === 'notOnFeet')
    return [['Landing', `${wordDown(landing.part)}: no landing on the feet is computed`]];
  if (landing.kind === 'asymmetric')
    return [['Landing', `not computed: ${wordNotComputed({ kind: 'asymmetric', of: landing.asymmetry })}`]];
  const r = landing.report;
  const e = r.energy;
  const j = (energy: number): string => `${energy.toFixed(0)} J`;
  return [
    [
      'Landing',
      `down at ${r.speed.toFixed(2)} m/s; ground force at most ${r.peak.bodyWeights.toFixed(1)} body weights at one instant, after ${ms(r.peak.t)}${
        r.bound ? ` (${BOUND_WORDS[r.bound]})` : ''
      }, ${r.filteredPeak.bodyWeights.toFixed(1)} as a mean over 10 ms (44 Hz)`,
    ],
    ['', `${brakingWords(r)}; ${bentWords(r)}`],
    [
      '',
      `of ${j(e.arrived)} the joints took ${j(e.joints)}, the mat ${j(e.matLost)} and holds ${j(e.matHeld)}, soles and soft tissue ${j(e.solesLost + e.solesHeld)}, ${j(e.left)} still move; strongest torque ${strongest(r)}`,
    ],
    // a bed lets no athlete stand: where the screen has him is of no use
    ...(isBed || r.brakeTime === undefined ? [] : [screenLine(r)]),
    [
      'Ending',
      isBed
        ? BED_WORDS.join(': ')
        : `${ENDING_WORDS[r.ending.kind](r.ending.direction).join('')}: ${r.ending.reasons.map((reason) => wordReason(reason)).join('; ')}`,
    ],
  ];
}

const ahead = (x: number): string => `${cm(Math.abs(x))} ${x < 0 ? 'back' : 'forward'}`;
/** Of what was braked. */
const screenLine = (r: LandingReport): [string, string] => [
  '',
  `extrapolated mass centre when braking ends, from the middle of the soles: ${ahead(r.screen.stopped)} to ${ahead(r.screen.decaying)}, its turning stopped at once or over 0.12 s (soles end at ${cm(r.screen.half)}); a screen, the run decides`,
];

const isStep = (kind: EndingKind): boolean => kind === 'smallStep' || kind === 'steps';

function brakingWords(r: LandingReport): string {
  if (r.brakeTime === undefined)
    return `${r.ending.kind === 'tooFast' ? 'its first tenth of a second alone is run' : isStep(r.ending.kind) ? 'a step begins before the sinking has ended' : 'not braked on its feet'}; sinks ${cm(r.sinkage)} into the mat`;
  return `braked in ${ms(r.brakeTime)}: mean deceleration ${r.meanG.toFixed(1)} g, mean ground force over that time ${r.meanBodyWeights.toFixed(1)} body weights; sinks ${cm(r.sinkage)}`;
}

/** How deep it goes. */
function bentWords(r: LandingReport): string {
  const knee = r.joints.find((j) => j.joint === 'knee');
  return knee ? `knees bent to ${(Math.abs(knee.furthest) * DEG).toFixed(0)} deg` : 'knees not bent';
}

function strongest(r: LandingReport): string {
  const j = r.joints.reduce((a, b) => (Math.abs(b.torque) > Math.abs(a.torque) ? b : a));
  return `${Math.abs(j.torque).toFixed(0)} N·m at the ${j.joint}s (both sides, with what their stops push back)`;
}
