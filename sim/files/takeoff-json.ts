/** What a take-off asks of its place, for the summary as JSON, in the units people type. Fields: docs/command-line.md. */
import { DEG } from '../math/angles.ts';
import type { CourseFacts } from '../skill/contact-course.ts';
import type { ContactRange } from '../skill/contact-ranges.ts';
import type { ContactCaution, ContactCautionKind, ContactDetail, ContactReport } from '../skill/contact-report.ts';

const UNITS: Readonly<Record<ContactCautionKind, string>> = {
  upOut: 'm/s',
  alongOut: 'm/s',
  momentum: '1/s',
  time: 's',
  alongIn: 'm/s',
  meanUp: 'body weights',
  peakUp: 'body weights',
  work: 'J/kg',
  height: 'm',
  place: 'm',
  slides: 'm',
  slips: '1',
  reach: 'm',
  turn: 'deg',
};

export function takeoffOf(r: ContactReport): object {
  return {
    place: r.place,
    upMPerS: r.out.up,
    alongMPerS: r.out.along,
    airRiseM: r.airRise,
    momentumKgM2PerS: r.momentum,
    momentumPerMassAndStature2: r.momentumShare,
    ...(r.contact ? { contact: contactOf(r.contact) } : {}),
    ranges: Object.fromEntries(
      Object.entries(r.ranges).map(([kind, range]) => [kind, rangeOf(kind as ContactCautionKind, range)]),
    ),
    cautions: r.cautions.map(cautionOf),
  };
}

function contactOf(c: ContactDetail): object {
  const { course } = c;
  return {
    timeS: c.time,
    inMPerS: c.in,
    meanBodyWeights: c.mean,
    peakBodyWeights: { up: c.peak.up, along: c.peak.along },
    broughtJPerKg: c.brought,
    workJPerKg: c.work,
    loadsCompared: c.loadsCompared,
    bed: c.bed
      ? { stiffnessNPerM: c.bed.stiffness, depthM: c.bed.depth, peakBodyWeights: c.bed.peak, heldJPerKg: c.bed.held }
      : null,
    turnsByKgM2PerS: c.turnsBy_W,
    course: course ? courseOf(course) : null,
  };
}

function courseOf(c: CourseFacts): object {
  return {
    entry: c.entry,
    travelM: c.moved_W[0],
    riseM: c.moved_W[1],
    turnedDeg: c.turned * DEG,
    limbTurnDeg: c.swing.value * DEG,
    meanHeightM: c.meanHeight,
    gapM: c.gap_W,
    offPlaceM: c.stays.value,
    stretchM: c.stretch.value,
    placeM: c.place ? { along: c.place.x, across: c.place.z, off: c.place.off } : null,
    peakBodyWeights: c.peak,
    openJPerKg: c.account.open,
    faults: c.faults,
    notKnown: c.unknowns,
  };
}

function rangeOf(kind: ContactCautionKind, { low, high, basis, source }: ContactRange): object {
  const finite = (x: number): number | null => (Number.isFinite(x) ? x * scaleOf(kind) : null);
  return { low: finite(low), high: finite(high), unit: UNITS[kind], basis, source };
}

const scaleOf = (kind: ContactCautionKind): number => (kind === 'turn' ? DEG : 1);

function cautionOf({ kind, value, range }: ContactCaution): object {
  return { kind, value: value * scaleOf(kind), ...rangeOf(kind, range) };
}
