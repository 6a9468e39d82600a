/** The command "fly": a skill's summary on stdout, frames and summary in files. */
import {
  ASKED_CLEARANCE,
  type CatchResult,
  type CatchWindow,
  calcCatchWindow,
  calcClearance,
  calcConditioning,
  calcContactReport,
  calcFrames,
  calcLateDose,
  calcLikelihood,
  calcSegmentFrames,
  calcSwingLoads,
  catchOf,
  catchWindowOf,
  DEFAULT_TOLERANCE,
  EXPLAIN_WORDS,
  flySkill,
  flyWhole,
  formatCatch,
  formatClearance,
  formatConditioning,
  formatContactCautions,
  formatFrames,
  formatLateDose,
  formatSegments,
  formatSummary,
  formatSummaryJson,
  formatWhole,
  frameTimes,
  launch,
  legsOf,
  loadContact,
  namedOffRail,
  namesOfSkill,
  type Provenance,
  phasesOf,
  placeOfSkill,
  provenance,
  summarize,
  verdictInFlight,
  verdictOf,
  type Whole,
  type WholeContact,
  wordBasis,
  wordFrames,
  wordLikelihood,
  wordNames,
  wordVerdict,
  wordWindowEnds,
} from '../../sim/index.ts';
import { wordCall } from './call.ts';
import { CLOSING } from './closing.ts';
import { CommandError } from './command-error.ts';
import { type CommandCall, RATE_HZ } from './command-line.ts';
import { runFlyChain } from './fly-chain.ts';
import { readDocument, readSkill } from './read-input.ts';
import { checkApart, type Output, writeFiles } from './write-files.ts';

/** More rows than this do not fit a table of some 200 columns in memory. */
const MOST_ROWS = 200_000;

export async function runFly(command: CommandCall & { kind: 'fly' }, args: readonly string[]): Promise<string> {
  if (!/#\d+$/.test(command.skill)) {
    const read = readDocument(command.skill);
    if (legsOf(read.file).length > 1) return runFlyChain(command, args, read);
  }
  const { skill, inputs, origin } = await readSkill(command.skill);
  const wanted = [
    ...(command.frames === undefined ? [] : [{ option: '--frames', file: command.frames }]),
    ...(command.segments === undefined ? [] : [{ option: '--segments', file: command.segments }]),
    ...(command.summary === undefined ? [] : [{ option: '--summary', file: command.summary }]),
  ];
  checkApart(wanted, inputs);
  // swing and landing bring their own engine, loaded only where the file asks for them
  const { start, after } = skill;
  const isWhole =
    start.kind !== 'stated' || start.contact !== undefined || after !== undefined || skill.catch !== undefined;
  const contact = isWhole ? await loadContact() : undefined;
  const whole = contact && flyWhole(skill, contact);
  const dose = contact && calcLateDose(skill, contact);
  const likelihood = whole && calcLikelihood(whole, contact);
  const loads = whole?.swing && calcSwingLoads(whole.swing);
  const launched = whole?.skill ?? launch(skill);
  const flight = whole?.flight ?? flySkill(launched);
  const window = contact && windowOf(whole, contact);
  const rows = flight.duration * command.rateHz;
  if ((command.frames !== undefined || command.segments !== undefined) && rows > MOST_ROWS)
    throw new CommandError(
      `--rate: ${command.rateHz} Hz over ${flight.duration.toFixed(3)} s makes ${Math.ceil(rows)} rows; allowed: at most ${MOST_ROWS}`,
    );

  // the summary does not depend on the rate asked for the CSV
  const frames = calcFrames(flight, frameTimes(flight.duration, RATE_HZ.default));
  const summary = summarize(flight, frames, skill.target);
  const takeoff = calcContactReport(whole ?? { skill: launched, flight });
  const nearest = calcClearance({ skill: launched, flight });
  const isOffRail = launched.launch.rail !== undefined;
  const judged = whole ? verdictOf(whole, summary, nearest) : verdictInFlight(launched, summary, nearest, flight.met);
  const verdict = namedOffRail(judged, isOffRail, summary, frames);
  const names = namesOfSkill(summary, frames, placeOfSkill(launched));
  const conditioning = calcConditioning(skill, contact, flight);
  const sentence = wordVerdict(verdict);
  const basis = wordBasis(verdict);
  const from = (keep: readonly string[] = []): Provenance =>
    provenance({ call: wordCall('fly', args, keep), inputs: [origin], tolerance: DEFAULT_TOLERANCE, seed: null });
  const outputs: Output[] = wanted.map((output) => {
    if (output.option === '--summary')
      return {
        ...output,
        pieces: [
          formatSummaryJson(skill.title, { sentence, verdict, basis, likelihood }, summary, {
            phases: whole && { ...phasesOf(whole, dose, loads), ...catchPhase(whole, window) },
            nearest,
            takeoff,
            conditioning,
            names,
            provenance: from(),
          }),
        ],
      };
    const style = { from: from(['rate']), isNumeric: command.isNumeric === true };
    const times = frameTimes(flight.duration, command.rateHz);
    if (output.option === '--segments')
      return { ...output, pieces: formatSegments(calcSegmentFrames(flight, times), flight.body, style) };
    const rated = command.rateHz === RATE_HZ.default ? frames : calcFrames(flight, times);
    return { ...output, pieces: formatFrames(rated, flight.body, wordFrames(rated), style) };
  });
  writeFiles(outputs);
  const caught = whole?.catch
    ? `\n${formatCatch(whole.catch)}${window ? `\n${formatWindow(window, whole.catch)}` : ''}\n`
    : '';
  const phases = `${caught}${whole ? `\n${formatWhole(whole, takeoff, loads)}` : ''}${dose ? `\n${formatLateDose(dose)}` : ''}`;
  const near = formatClearance(nearest, ASKED_CLEARANCE);
  const cautions = formatContactCautions(takeoff);
  const sensitive = formatConditioning(conditioning, EXPLAIN_WORDS.moves);
  const { ending } = verdict;
  const likely = likelihood && ending.kind === 'landed' ? wordLikelihood(likelihood.tenths, ending.how) : '';
  const said = [sentence, ...(likely ? [`${likely}.`] : []), basis, ...(sensitive ? [sensitive] : [])].join('\n');
  const words = `${formatSummary(skill.title, said, summary, wordNames(names))}${cautions && `\n${cautions}`}`;
  return `${words}${phases}${near && `\nNearest    ${near}\n`}\n${CLOSING}\n`;
}

/** Over moments of letting go. */
function windowOf(whole: Whole | undefined, contact: WholeContact): CatchWindow | undefined {
  if (!whole?.swing || !whole.skill.catch) return undefined;
  return calcCatchWindow(whole.skill, whole.swing, whole.skill.catch, contact);
}

function formatWindow(window: CatchWindow, { spec }: CatchResult): string {
  const { span } = window;
  if (!span) return 'Letting go no moment looked at ends in a catch';
  return `Letting go ${(1000 * (span.to - span.from)).toFixed(0)} ms end in a catch${wordWindowEnds(window, spec)
    .map((end) => `; ${end}`)
    .join('')}`;
}

const catchPhase = ({ catch: caught }: Whole, window: CatchWindow | undefined): object =>
  caught ? { catch: catchOf(caught), ...(window ? { catchWindow: catchWindowOf(window) } : {}) } : {};
