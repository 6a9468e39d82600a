/** The command "camera": the filming of a flight with one camera, planned; what it sees of it as CSV. */
import {
  ASK_FIRST,
  contactFor,
  DEFAULT_TOLERANCE,
  type ExpectedErrors,
  expectErrors,
  FieldError,
  type FilmCamera,
  type FilmingPlan,
  fastestOf,
  filmFlight,
  flySkill,
  formatCameraCsv,
  launch,
  marksOf,
  ONE_CAMERA,
  PLAIN_FILMING,
  plainRuns,
  planFilming,
  provenance,
  roomSize,
  wordFilming,
  wordFilmingFaults,
  wordJoint,
  wordLines,
  wordPart,
  wordPixels,
  wordShare,
  wordShutter,
} from '../../sim/index.ts';
import { wordCall } from './call.ts';
import { type CameraCommand, OPTION_OF } from './camera-args.ts';
import { CLOSING } from './closing.ts';
import { CommandError } from './command-error.ts';
import { readSkill } from './read-input.ts';
import { checkApart, writeFiles } from './write-files.ts';

const DEG = 180 / Math.PI;

export async function runCamera(
  { skill: given, camera, csv, errors }: CameraCommand,
  args: readonly string[],
): Promise<string> {
  const { spec, skill, inputs, origin } = await readSkill(given);
  const wanted = csv === undefined ? [] : [{ option: '--csv', file: csv }];
  checkApart(wanted, inputs);
  const flight = flySkill(launch(skill, await contactFor(spec)));
  const filmed = take(filmFlight(flight));
  const plan = checked(() => take(planFilming(filmed, camera)));
  const from = provenance({
    call: wordCall('camera', args),
    inputs: [origin],
    tolerance: DEFAULT_TOLERANCE,
    seed: null,
  });
  const expected = errors ? take(expectErrors(flight, camera.framesHz, plan.sightline.p_WC_W)) : undefined;
  writeFiles(wanted.map((to) => ({ ...to, pieces: formatCameraCsv(flight, camera, plan.stand, { from }) })));
  return `${skill.title}\n${formatPlan(plan)}\n${expected ? `${formatErrors(expected)}\n` : ''}\n${CLOSING}\n`;
}

function take<T>(steps: Generator<unknown, T>): T {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

/** A fault of the camera by the option that it was typed as. */
function checked<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    const option = OPTION_OF[error.field as keyof FilmCamera] ?? error.field;
    throw new CommandError(`--${option}${error.message.slice(error.field.length)}`);
  }
}

function formatPlan(plan: FilmingPlan): string {
  const { camera, hidden, holdsFrom } = plan;
  const faults = wordFilmingFaults(plan);
  const fast = fastestOf(plan);
  const row = (name: string, value: string): string => `  ${name.padEnd(19)}${value}`;
  const [along, across, high] = roomSize(plan);
  const [markAlong, markAcross] = marksOf(plan);
  const aim = camera.aim ?? plan.stand.middle[1] - plan.stand.floorY;
  const lines = [
    row(
      'Camera',
      `${m(camera.away)} away, ${m(camera.up)} up, ${(camera.offSquare * DEG).toFixed(0)} deg off square, looking at ${m(aim)} up`,
    ),
    row(
      '',
      `${(camera.view * DEG).toFixed(0)} deg across, ${camera.width} x ${camera.height}, shutter ${wordShutter(camera.shutter)}, ${wordLines(camera.lines)}`,
    ),
    row('Room', `body and hands take ${along.toFixed(2)} x ${across.toFixed(2)} m, ${high.toFixed(2)} m high`),
    row('Held from', holdsFrom === undefined ? 'no distance with this aim and field of view' : m(holdsFrom)),
    ...(plan.isOverWater
      ? []
      : [row('Marks', `four on the floor, ${markAlong.toFixed(1)} x ${markAcross.toFixed(1)} m apart, filmed once`)]),
    ...(fast
      ? [
          row(
            'Fastest, a frame',
            `the ${wordPart(fast)} at ${fast.t.toFixed(2)} s: ${(fast.degrees * DEG).toFixed(1)} deg, ${PLAIN_FILMING.step(fast.metres)}, ${wordPixels(fast.pixels)} pixels`,
          ),
          row('Blur', `${wordPixels(fast.blur)} pixels`),
          row('Skew', `${wordPixels(Math.max(...plan.steps.skew))} pixels at most, from lines read one after another`),
        ]
      : []),
    ...hidden.map((one, i) =>
      row(
        i === 0 ? 'Hidden' : '',
        `${wordJoint(one)}: ${wordShare(one.share)}${one.spans.length > 0 ? `, ${one.spans.map(({ from, to }) => `${from.toFixed(2)} to ${to.toFixed(2)} s`).join(', ')}` : ''}`,
      ),
    ),
  ];
  return [plainRuns(wordFilming(plan)), ...faults, ONE_CAMERA, ...lines, ASK_FIRST].join('\n');
}

/** About nineteen of twenty are nearer. */
function formatErrors({ airTime, one, two, seeds }: ExpectedErrors): string {
  const deg = (x: number): string => (Number.isFinite(x) ? `${(x * DEG).toFixed(1)} deg` : 'not known');
  const line = (name: string, { somersault, twist, tilt, momentum }: ExpectedErrors['one']): string =>
    `  ${name.padEnd(19)}somersault ${deg(somersault)}, twist ${deg(twist)}, tilt ${deg(tilt)}, momentum ${Number.isFinite(momentum) ? `${(100 * momentum).toFixed(1)} %` : 'not known'}`;
  return [
    `To be expected, to either side (${seeds} films read, points set 10 mm and half a frame off)`,
    `  ${'Air time'.padEnd(19)}${airTime.toFixed(4)} s, both marks`,
    line('One camera', one),
    line('Two cameras', two),
  ].join('\n');
}

const m = (x: number): string => PLAIN_FILMING.metres(x);
