/** A summary as JSON, in the units people type; null is "not defined". Fields: docs/command-line.md. */

import { DEG, REV } from '../math/angles.ts';
import { jsonText } from '../math/json-text.ts';
import type { Clearance } from '../measure/clearance.ts';
import type { JointPeak, Peak, Summary } from '../measure/summary.ts';
import type { SkillNames } from '../notation/skill-names.ts';
import type { Sensitivity } from '../skill/conditioning.ts';
import type { ContactReport } from '../skill/contact-report.ts';
import type { Likelihood } from '../skill/likelihood.ts';
import type { SkillVerdict } from '../skill/skill-verdict.ts';
import { beyondOf, linesOf } from './beyond-json.ts';
import { CAUTION, COMPARED } from './caution.ts';
import { conditioningJson } from './conditioning-json.ts';
import type { Provenance } from './provenance.ts';
import { takeoffOf } from './takeoff-json.ts';
import { likelihoodJson, verdictJson } from './verdict-json.ts';

const SUMMARY_FORMAT = 'shapeflight-summary';
const SUMMARY_VERSION = 1;

type Numbers = Record<string, number | null>;

interface Said {
  readonly sentence: string;
  readonly verdict: SkillVerdict;
  /** what the ending was judged by, in words */
  readonly basis?: string;
  readonly likelihood?: Likelihood | undefined;
}
/** What came before and after the flight (phases-json.ts), what came nearest to rail, table or board, what the take-off asks of its place, how sensitive the result is, what the skill is called, where the summary is from. */
interface Around {
  readonly phases?: object | undefined;
  readonly nearest?: Clearance | undefined;
  readonly takeoff?: ContactReport | undefined;
  readonly conditioning?: readonly Sensitivity[] | undefined;
  readonly names?: SkillNames | undefined;
  readonly provenance?: Provenance | undefined;
}

/** `said`: the verdict and its sentence. */
export function formatSummaryJson(
  title: string,
  { sentence, verdict, basis, likelihood }: Said,
  s: Summary,
  { phases, nearest, takeoff, conditioning, names, provenance }: Around = {},
): string {
  const { landing, target, body } = s;
  const nameOf = (angle: number): string => body.angles[angle].name;
  const joint = (peak: JointPeak | undefined, value: string, scale: number): object | null =>
    peak
      ? { angle: nameOf(peak.angle), ...at(peak, value, scale), limit: finite(peak.limit * scale), source: peak.source }
      : null;
  const file = {
    format: SUMMARY_FORMAT,
    version: SUMMARY_VERSION,
    ...(provenance ? { provenance } : {}),
    caution: CAUTION,
    compared: COMPARED,
    title,
    sentence,
    verdict: {
      ...verdictJson(verdict),
      basis: basis ?? null,
      likelihood: likelihood ? likelihoodJson(likelihood) : null,
    },
    called: names
      ? {
          place: names.place,
          name: names.name ?? null,
          trampolineCode: names.code ?? null,
          difficulty: names.difficulty === undefined ? null : Number(names.difficulty),
          diveNumber: names.dive ?? null,
          reason: names.reason ?? null,
        }
      : null,
    athlete: {
      name: body.name,
      massKg: body.mass,
      statureM: body.stature ?? null,
      ...(body.age === undefined ? {} : { ageYears: body.age }),
      ...(body.notes?.length ? { notes: body.notes } : {}),
    },
    done: {
      somersaults: finite(s.somersaults),
      somersaultWord: s.somersaultWord,
      twists: finite(s.twists),
      twistWord: s.twistWord,
      durationS: s.duration,
      apexS: finite(s.apex),
      touchedBy: s.touchedBy ?? null,
      undefinedFromS: finite(s.undefinedFrom),
    },
    landing: landing
      ? {
          wantedSomersaultDeg: landing.wanted * DEG,
          reachedSomersaultDeg: landing.reached * DEG,
          shortDeg: landing.short * DEG,
          word: landing.word,
          headFirst: landing.inverted,
          tiltDeg: finite((s.tilt ?? Number.NaN) * DEG),
          headTo: s.tiltWord,
        }
      : null,
    target: target
      ? {
          somersaults: target.somersaults,
          direction: target.somersaultWord,
          twists: target.twists,
          twistTo: target.twistWord,
          landingAngleDeg: target.landingAngle * DEG,
        }
      : null,
    angularMomentumKgM2PerS: { x: s.h_Scm_W[0], y: s.h_Scm_W[1], z: s.h_Scm_W[2] },
    gravityMPerS2: s.gravity,
    surfaceHeightM: s.surfaceY,
    jointWorkJ: s.jointWork,
    peaks: {
      massCentreHeight: at(s.height, 'heightM', 1),
      somersaultRate: at(s.somersaultRate, 'revPerS', 1 / REV),
      twistRate: at(s.twistRate, 'revPerS', 1 / REV),
      tilt: at(s.greatestTilt, 'deg', DEG),
      jointSpeed: joint(s.fastest, 'degPerS', DEG),
      jointTorque: joint(s.strongest, 'torqueNM', 1),
    },
    nearest: nearest ? { to: nearest.solid, part: nearest.part, distanceM: nearest.distance, atS: nearest.t } : null,
    takeoff: takeoff ? takeoffOf(takeoff) : null,
    ...(conditioning ? { conditioning: conditioningJson(conditioning) } : {}),
    beyondLimits: beyondOf(body, s.cautions, s.said),
    notCompared: linesOf(s.notCompared),
  };
  return `${jsonText({ ...file, ...(phases ? { phases } : {}) })}\n`;
}

const finite = (x: number | undefined): number | null => (x !== undefined && Number.isFinite(x) ? x : null);

function at(peak: Peak | undefined, name: string, scale: number): Numbers | null {
  return peak ? { [name]: finite(peak.value * scale), atS: peak.t } : null;
}
