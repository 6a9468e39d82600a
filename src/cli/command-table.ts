/** Every command with its options: what its help prints, what an unknown option is answered with, and which options do not change a number. */
import { CommandError } from './command-error.ts';
import { aside, type CommandRow, NUMERIC, type OptionRow } from './option-row.ts';
import { SEARCH_COMMANDS } from './search-table.ts';

const PLAIN_COMMANDS = {
  fly: {
    usage: 'fly SKILL [options]',
    does: 'flies a skill and says what came of it; a chain is flown whole, SKILL#2 is its second flight alone',
    options: [
      aside('frames', 'OUT.csv', 'every instant of the flight: root, joints, torques, momentum, energies, measures'),
      aside(
        'segments',
        'OUT.csv',
        'where every segment is at every instant: attitudes, joint centres, points, joint angles',
      ),
      aside('summary', 'OUT.json', 'the summary as JSON'),
      aside('rate', 'HZ', 'rows a second of the CSV, 1 to 10000; at most 200,000 rows', '240 Hz'),
      NUMERIC,
    ],
    units: 'CSV in SI units and radians; summary in metres, seconds, degrees and turns',
    example: 'fly back-straight-full --frames full.csv --rate 100 --summary full.json',
    page: 'docs/frames.md',
  },
  body: {
    usage: 'body SKILL_OR_ATHLETE [options]',
    does: 'prints the segments of a body and its moments of inertia in the named shapes',
    options: [aside('mjcf', 'OUT.xml', 'the body as an MJCF model')],
    units: 'kg, m, kg·m²',
    example: 'body ilse-marrow --mjcf ilse.xml',
    page: 'docs/body.md',
  },
  sheet: {
    usage: 'sheet FILE [options]',
    does: 'computes an estimate sheet: quantities and formulas with units and their uncertainty',
    options: [
      { name: 'skill', takes: 'SKILL', says: 'sets its results against the simulated skill', usual: 'none' },
      aside('csv', 'OUT.csv', 'every line with its results'),
      aside('page', 'OUT.html', 'a page to print, with the formulas set as mathematics'),
    ],
    units: 'those that the sheet writes',
    example: 'sheet energy-of-spin --skill back-tuck --csv spin.csv',
    page: 'docs/estimate.md',
  },
  class: {
    usage: 'class FILE ... [options]',
    does: 'reads the worksheets that a class handed in, and prints every answer beside what the flight gives; names stay on this machine',
    options: [aside('csv', 'OUT.csv', 'a line for each student and question')],
    units: 'those that the questions ask for',
    example: 'class handed-in/*.json --csv answers.csv',
    page: 'docs/worksheet.md',
  },
  picture: {
    usage: 'picture SKILL --out OUT.svg [options]',
    does: 'draws poses of a flight to scale, as an SVG with its typeface and the caution in it, and without a name',
    options: [
      aside('out', 'OUT.svg', 'the picture; needed'),
      { name: 'as', takes: 'LAYOUT', says: 'row: side by side; path: where they are; time: over time', usual: 'row' },
      { name: 'by', takes: 'STEP', says: 'equal steps of time, somersault or twist', usual: 'time' },
      { name: 'count', takes: 'N', says: 'so many poses, 2 to 16', usual: '6' },
      { name: 'at', takes: 'T,T,...', says: 'chosen moments in place of equal steps, s' },
      { name: 'beside', takes: 'SKILL', says: 'a second version, dashed' },
      { name: 'width', takes: 'MM', says: 'how wide it is in print, 60 to 1200', usual: '160 mm' },
      { name: 'plain', says: 'without name and result over it' },
      { name: 'named', says: "with the athlete's name" },
    ],
    units: 'seconds; millimetres in print; a bar shows the metre',
    example: 'picture back-straight-full --as path --by twist --count 5 --out full.svg',
    page: 'docs/card-and-pictures.md',
  },
  camera: {
    usage: 'camera SKILL [options]',
    does: 'plans the filming of a flight with one camera: what moves how far a frame, what is hidden, what the picture holds, what a recording of it would be known to',
    options: [
      { name: 'away', takes: 'M', says: 'along the floor from the middle of the flight, 1 to 100', usual: '8.5 m' },
      { name: 'up', takes: 'M', says: 'over the floor, 0.1 to 20', usual: '1.4 m' },
      { name: 'off-square', takes: 'DEG', says: 'nearer to where the flight begins, -90 to 90', usual: '0 deg' },
      { name: 'aim', takes: 'M', says: 'the height it looks at, 0 to 20', usual: 'half way up the flight' },
      { name: 'view', takes: 'DEG', says: 'field of view across, 5 to 150', usual: '42 deg' },
      { name: 'frames', takes: 'HZ', says: 'pictures a second, 10 to 2000', usual: '120' },
      { name: 'shutter', takes: 'S', says: 'how long it is open, as 0.001 or 1/1000', usual: '1/1000 s' },
      { name: 'lines', takes: 'S', says: 'from reading the first line to the last; 0: all at once', usual: '0.008 s' },
      { name: 'picture', takes: 'WxH', says: 'size of the picture, 160 to 8192 each', usual: '1920x1080 px' },
      { name: 'errors', says: 'also what a film would be known to, by one camera and by two; takes some seconds' },
      aside(
        'csv',
        'OUT.csv',
        'a row for each picture: where hands, feet, head and joints are in it, and which are hidden',
      ),
    ],
    units: 'metres, degrees, seconds, pixels',
    example: 'camera back-straight-full --away 9 --frames 240 --csv full-camera.csv',
    page: 'docs/filming.md',
  },
  times: {
    usage: 'times --takeoff S --hz HZ [options]',
    does: 'says what instants that were read off a film give: air time, speed up, rise, rates of turning, braking, each with its ±',
    options: [
      {
        name: 'takeoff',
        takes: 'S',
        says: 'the first frame in which nothing touches, as the player shows its time; needed',
      },
      { name: 'landing', takes: 'S', says: 'the first frame in which something touches again' },
      {
        name: 'turns',
        takes: 'S,S,...',
        says: 'nearest frames to the 1st, 2nd, 3rd ... quarter turn; nothing between two commas: not seen',
      },
      { name: 'highest', takes: 'S', says: 'the frame in which it is highest' },
      { name: 'rest', takes: 'S', says: 'the first frame at rest after the landing' },
      { name: 'hand-off', takes: 'S', says: 'the first frame in which a hand has let go' },
      { name: 'hz', takes: 'HZ', says: 'frames really taken in a second, 1 to 2000; needed' },
      { name: 'file-hz', takes: 'HZ', says: 'frames that the player shows in a second', usual: 'as --hz' },
      {
        name: 'drop',
        takes: 'M',
        says: 'how much lower the mass centre is at landing than at take-off, known to 0.03 m',
        usual: '0 m, known to 0.1 m',
      },
      {
        name: 'lines',
        takes: 'S',
        says: 'from reading the first line of a picture to the last, 0 to 0.1',
        usual: 'not known',
      },
    ],
    units: 'seconds, metres, turns',
    example: 'times --takeoff 0.433 --landing 1.458 --turns 0.675,0.942,1.225 --hz 120',
    page: 'docs/clip.md',
  },
  fit: {
    usage: 'fit RECORDING ... [options]',
    does: 'reads recordings (BVH, TRC, C3D, CSV, TSV), says whether they obey physics, sets the model beside them, and fits the take-off; several are of one athlete',
    options: [
      { name: 'map', takes: 'MAP.json', says: 'what its names are on the body, where they are not known' },
      { name: 'athlete', takes: 'ID_OR_FILE', says: 'whose masses and proportions', usual: 'ilse-marrow' },
      { name: 'from', takes: 'S', says: 'start of the flight in the time of the recording', usual: 'found' },
      { name: 'to', takes: 'S', says: 'its end', usual: 'found' },
      { name: 'smooth', takes: 'HOW', says: 'gcv: by the data itself; noise:DEG, cutoff:HZ, none', usual: 'gcv' },
      { name: 'gap', takes: 'S', says: 'longest gap that is filled, 0 to 1', usual: '0.1 s' },
      { name: 'lengths', takes: 'WHOSE', says: 'lengths of limbs: recording or athlete', usual: 'recording' },
      {
        name: 'masses',
        says: 'shares of mass of arms, legs and trunk are fitted too; the mass itself changes no flight',
      },
      aside('out', 'SKILL.json', 'a skill that flies the measured angles from the fitted take-off'),
      aside('report', 'OUT.json', 'everything that is said, with the curves'),
      aside('map-out', 'MAP.json', 'what its names were taken for, to be edited and given back by --map'),
      aside('bvh', 'OUT.bvh', 'the recording on our skeleton'),
      aside('trc', 'OUT.trc', 'the same as points'),
      aside('csv', 'OUT.csv', 'the same as a table of angles'),
    ],
    units: 'm, s, deg, turns, kg·m²/s',
    example: 'fit full.c3d --athlete nell-oakum --out full.json --report full-report.json',
    exits: ['3  it is no test of the model, so that --out is not written'],
    page: 'docs/recording.md',
  },
  export: {
    usage: 'export SKILL --as 1 --out OUT.json',
    does: 'writes a skill as a version 1 file, for builds of Shapeflight that know no other',
    options: [
      { name: 'as', takes: '1', says: 'the version to write; needed' },
      aside('out', 'OUT.json', 'the file; needed'),
    ],
    units: 'as in the file: degrees, metres, seconds',
    example: 'export back-tuck --as 1 --out old.json',
    page: 'docs/skill-file.md',
  },
  link: {
    usage: 'link SKILL [options]',
    does: 'prints a skill as a link that any Shapeflight opens, without name, age and mass; every command reads one in place of a file',
    options: [
      aside('with', 'LIST', 'what goes along: name,age,mass,sheets,film', 'none'),
      aside('base', 'URL', 'address of the bench that it begins with', 'none: it begins with #'),
    ],
    units: 'as in the file: degrees, metres, seconds',
    example: 'link back-tuck --with age,mass --base https://bench.example/',
    page: 'docs/hand-on.md',
  },
  fix: {
    usage: 'fix SKILL [options]',
    does: 'what would land it: the smallest change of each sort, one at a time, as a cue; two at once where no single one does',
    options: [
      { name: 'way', takes: 'N', says: 'which of those that are listed is written', usual: '1' },
      aside('out', 'OUT.json', 'the skill with that change'),
    ],
    units: 'seconds, degrees, centimetres',
    example: 'fix back-straight --out landed.json',
    exits: ['3  no change lands it; nothing is written', '130  interrupted (Ctrl+C), with what was found so far said'],
    page: 'docs/command-line.md',
  },
  draft: {
    usage: 'draft CODE_OR_NAME --out OUT.json [options]',
    does: 'a skill from "8 02 /", 5253B or "rudi" that flies to exactly that, or the limit in the way and the nearest that flies',
    options: [
      { name: 'athlete', takes: 'ID_OR_FILE', says: 'for whom', usual: 'ilse-marrow' },
      { name: 'place', takes: 'P', says: 'floor, trampoline, board or platform', usual: 'as the text says it' },
      { name: 'beyond-strength', says: 'what is refused for strength alone is written all the same, marked as such' },
      aside('out', 'OUT.json', 'the skill; needed'),
    ],
    units: 'as in the file: degrees, metres, seconds',
    example: 'draft "rudi" --athlete nell-oakum --out rudi.json',
    exits: ['3  it is refused; nothing is written'],
    page: 'docs/notation.md',
  },
} as const satisfies Record<string, CommandRow>;

export const COMMANDS = { ...PLAIN_COMMANDS, ...SEARCH_COMMANDS };
export type CommandName = keyof typeof COMMANDS;

export const optionsOf = (command: CommandName): readonly OptionRow[] => COMMANDS[command].options;

export const isCommand = (name: string): name is CommandName => Object.hasOwn(COMMANDS, name);

/** An unknown option is answered with those that there are. */
export const wordNoOption = (command: CommandName, option: string): CommandError =>
  new CommandError(
    `${command}: --${option} is not an option of this command; there are: ${optionsOf(command)
      .map(({ name }) => `--${name}`)
      .join(', ')} (shapeflight ${command} --help)`,
  );
