/** The command "fly" of a chain: every flight in its order with what lies before it, why the rest is not flown, and what each phase gave or took. */
import {
  buildChain,
  type ChainAccountRow,
  calcBounce,
  calcChainAccount,
  calcChainSensitivity,
  calcClearance,
  calcContactReport,
  calcFrames,
  chainJson,
  contactLines,
  DEFAULT_TOLERANCE,
  type FlownChain,
  type FlownLeg,
  flyChain,
  formatCatch,
  formatContactCautions,
  frameTimes,
  loadContact,
  namedOffRail,
  parseChain,
  provenance,
  type SkillVerdict,
  type Summary,
  summarize,
  verdictOf,
  wordBasis,
  wordBounce,
  wordSensitivity,
  wordStop,
  wordVerdict,
} from '../../sim/index.ts';
import { wordCall } from './call.ts';
import { CLOSING } from './closing.ts';
import { CommandError } from './command-error.ts';
import { type CommandCall, RATE_HZ } from './command-line.ts';
import type { ReadDocument } from './read-input.ts';
import { formatTable } from './table.ts';
import { checkApart, writeFiles } from './write-files.ts';

export async function runFlyChain(
  command: CommandCall & { kind: 'fly' },
  args: readonly string[],
  { file, shelf, inputs, origin }: ReadDocument,
): Promise<string> {
  const table = command.frames !== undefined ? '--frames' : command.segments !== undefined ? '--segments' : undefined;
  if (table)
    throw new CommandError(
      `${table}: frames are of one flight; choose one, ${command.skill}#1, ${command.skill}#2 ...`,
    );
  const wanted = command.summary === undefined ? [] : [{ option: '--summary', file: command.summary }];
  checkApart(wanted, inputs);
  const chain = buildChain(parseChain(file, shelf));
  const contact = await loadContact();
  const flown = flyChain(chain, contact);
  const sensitivity = calcChainSensitivity(chain, contact);
  const legs = flown.legs.map(judgeLeg);
  const account = calcChainAccount(flown);
  const titles = flown.chain.legs.map(({ title }) => title);
  const stop = wordStop(flown.stop, titles);
  const call = wordCall('fly', args);
  const from = provenance({ call, inputs: [origin], tolerance: DEFAULT_TOLERANCE, seed: null });
  writeFiles(
    wanted.map((output) => ({ ...output, pieces: [chainJson(flown, legs, account, stop, from, sensitivity)] })),
  );
  const lines = legs.map((leg, k) => formatLeg(flown, leg, k));
  const rest = [
    ...(stop ? [stop] : []),
    ...(sensitivity ? [...wordSensitivity(sensitivity), ''] : []),
    formatAccount(account, flown),
  ];
  return `${[file.title, '', ...lines, ...rest].join('\n')}\n\n${CLOSING}\n`;
}

interface JudgedLeg {
  readonly flown: FlownLeg;
  readonly summary: Summary;
  readonly verdict: SkillVerdict;
  readonly sentence: string;
  readonly basis: string;
}

function judgeLeg(flown: FlownLeg): JudgedLeg {
  const { whole } = flown;
  const { flight, skill } = whole;
  const frames = calcFrames(flight, frameTimes(flight.duration, RATE_HZ.default));
  const summary = summarize(flight, frames, skill.target);
  const judged = verdictOf(whole, summary, calcClearance(whole));
  const verdict = namedOffRail(judged, skill.launch.rail !== undefined, summary, frames);
  return { flown, summary, verdict, sentence: wordVerdict(verdict), basis: wordBasis(verdict) };
}

function formatLeg(
  { chain }: FlownChain,
  { flown: { whole, from, to }, sentence, basis }: JudgedLeg,
  k: number,
): string {
  const report = calcContactReport(whole);
  const bounce =
    report?.place === 'trampoline' && whole.course ? wordBounce(calcBounce(whole.course, whole.flight)) : '';
  const cautions = formatContactCautions(report).trimEnd();
  const lines = [
    `${k + 1}. ${chain.legs[k].title}, ${from.toFixed(2)} to ${to.toFixed(2)} s`,
    ...(report ? contactLines(report).map((line) => `   before: ${line}`) : []),
    ...(bounce ? [`   ${bounce}`] : []),
    `   ${sentence}`,
    ...(whole.catch ? indented(formatCatch(whole.catch)) : []),
    ...(basis ? [`   ${basis}`] : []),
    ...(cautions ? [cautions] : []),
    '',
  ];
  return lines.join('\n');
}

const indented = (text: string): string[] => text.split('\n').map((line) => `   ${line}`);

const f = (x: number, digits = 0): string => x.toFixed(digits);

function formatAccount(rows: readonly ChainAccountRow[], { chain }: FlownChain): string {
  const cells = rows.map(({ phase, leg, from, to, energy, momentum_W: h, misses }) => [
    phase,
    chain.legs[leg].title,
    f(from, 2),
    f(to, 2),
    f(energy.before),
    f(energy.after - energy.before),
    f(energy.after),
    f(h.before[2], 1),
    f(h.after[2] - h.before[2], 1),
    f(h.after[2], 1),
    misses.energy?.toExponential(0) ?? '-',
  ]);
  const head = [
    'phase',
    'flight',
    'from s',
    'to s',
    'J before',
    'gave',
    'after',
    'h_z before',
    'gave',
    'after',
    'misses',
  ];
  return `Energy of the athlete over the floor, and somersault momentum about the mass centre, kg·m²/s; misses: share by which the sum over time differs\n${formatTable(head, cells, 2)}`;
}
