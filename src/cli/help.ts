/** What --help prints, of all commands and of one. */
import { athletes, chains, skills } from '../../presets/index.ts';
import { sheets } from '../../presets/sheet-shelf.ts';
import { CLOSING } from './closing.ts';
import { COMMANDS, type CommandName, optionsOf } from './command-table.ts';
import type { CommandRow } from './option-row.ts';

export function formatHelp(): string {
  return `shapeflight: the flight physics of gymnasts, trampolinists and divers

  shapeflight fly SKILL [--frames OUT.csv] [--segments OUT.csv] [--summary OUT.json] [--rate HZ]
      flies a skill and says what came of it; SKILL#2 is the second flight of a chain, in every command
      --frames OUT.csv    every instant of the flight: root, joints, torques, momentum, energies, measures
      --segments OUT.csv  where every segment is at every instant: attitudes, joint centres, points, joint angles
      --summary OUT.json  the summary as JSON
      --numeric           the CSVs as numbers alone
      --rate HZ           rows a second of the CSV, 1 to 10000 (240)

  shapeflight body SKILL_OR_ATHLETE [--mjcf OUT.xml]
      prints the segments of a body and its moments of inertia in the named shapes
      --mjcf OUT.xml      the body as an MJCF model

  shapeflight sheet FILE [--skill SKILL] [--csv OUT.csv] [--page OUT.html]
      computes an estimate sheet: quantities and formulas with units and their uncertainty
      --skill SKILL       sets its results against the simulated skill, and says what makes the difference
      --csv OUT.csv       every line with its results
      --page OUT.html     a page to print, with the formulas set as mathematics

  shapeflight class FILE ... [--csv OUT.csv]
      reads the worksheets that a class handed in: every answer beside what the flight gives
      --csv OUT.csv       a line for each student and question

  shapeflight picture SKILL --out OUT.svg [--as row|path|time] [--by time|somersault|twist] [--count N] [--at 0,0.3,...]
      poses side by side, along the path or over time, to scale, with the typeface in the file and no name
      --beside SKILL      a second version under or behind the first
      --width MM          60 to 1200 (160); --plain leaves out name and result, --named puts the athlete's name in

  shapeflight camera SKILL [--away M --up M --off-square DEG --view DEG --frames HZ --shutter S --lines S] [--csv OUT.csv]
      plans the filming of a flight: what moves how far a frame, what is hidden, what the picture holds (docs/filming.md)
      --csv OUT.csv       a row for each picture that the camera takes

  shapeflight times --takeoff S --hz HZ [--landing S] [--turns S,S,...] [--highest S] [--rest S] [--hand-off S] [--file-hz HZ]
      what instants that were read off a film give: air time, speed up, rise, rates of turning, each with its ± (docs/clip.md)

  shapeflight fit RECORDING ... [--map MAP.json] [--athlete ID_OR_FILE] [--from S --to S] [--smooth HOW] [--out SKILL.json]
      reads recordings (BVH, TRC, C3D, CSV), says whether they obey physics, sets the model beside them and fits the take-off
      --report OUT.json   everything that is said, with the curves; --bvh, --trc, --csv write the recording on our skeleton

  shapeflight export SKILL --as 1 --out OUT.json
      writes a skill as a version 1 file, for builds of Shapeflight that know no other

  shapeflight link SKILL [--with name,age,mass,sheets,film] [--base URL]
      prints a skill as a link, and what it leaves out; a link may be given wherever a SKILL is asked for

  shapeflight fix SKILL [--way N] [--out OUT.json]
      what would land it: the smallest change of each sort, one at a time, as a cue; two at once where no single one does
      --out OUT.json      the skill with the first of them, or with the one that --way numbers

  shapeflight draft CODE_OR_NAME [--athlete ID] [--place P] --out OUT.json
      a skill from "8 02 /", 5253B or "rudi" that flies to exactly that, or the limit in the way and the nearest that flies
      --athlete ID        an athlete, or a file (ilse-marrow)
      --place P           floor, trampoline, board or platform, where the text does not say it
      --beyond-strength   what is refused for strength alone is written all the same, marked as such

  shapeflight solve SKILL --vary INPUT[=A..B] ... [--target NAME=VALUE,... | --code CODE] [--limits LIST]
      finds values of the inputs with which the skill meets a target, and says what each answer costs; or the nearest
      miss and what prevents it (docs/solve.md lists inputs, targets and every option)
      --target LIST       somersaults, direction, twists, twistTo, landing, tilt (deg), airTime (s), height (m)
      --ending held|any   where it comes down on its feet: held by its verdict, or at its angle alone (held)
      --limits LIST       joint limits that must hold: range,speed,torque
      --seed N            the same seed gives the same answers (1)
      --tries N           flights with the usual errors behind the margin of each answer (200; 0 leaves it out)
      --forgiving N       N moves on from the best answer in search of a wider margin (0)
      --json OUT.json     the answers as JSON; --out SKILL.json the best one as a skill

  shapeflight margin SKILL [--samples N] [--seed S] [--jobs N] [--from A --to B] [--balance hips|arms]
      how far the inputs may be off before the landing leaves its window, one at a time and all together
      (docs/margin.md lists every option)
      --vary INPUT[=BY]   what is off, and by how much; left out: the usual errors
      --level LEVEL       whose usual errors: national, elite (national)
      --error-factor X    usual errors times X, 0.5 to 2 (1)
      --csv OUT.csv       every sample; spans put end to end are the whole
      --read FILE ...     reads such samples instead of flying them
      --verify N          of those read, so many are flown again (50)
      --json OUT.json     the study

  shapeflight map SKILL --x INPUT[=FROM..TO] --y INPUT[=FROM..TO] [--of RESULT,...] [--grid 41x41] [--jobs N]
      two inputs against results; --csv and --json as above, --from and --to are rows

  shapeflight COMMAND --help        all options of one command, what is usual, units, an example, exit codes
  shapeflight --help, shapeflight --version

SKILL and ATHLETE are JSON files (docs/skill-file.md) or one of these:
  skills:   ${wrap(Object.keys(skills))}
  chains:   ${wrap(Object.keys(chains))}
  athletes: ${wrap(Object.keys(athletes))}
FILE is a sheet as JSON or plain text (docs/estimate.md) or one of these:
  sheets:   ${wrap(Object.keys(sheets))}

Exit codes: 0; 2 with one line that says what is wrong with the input; 3 where a search could fly or find nothing, so that nothing is
written; 130 when interrupted, with what was found so far kept. Columns of the CSV: docs/frames.md

${CLOSING}
`;
}

export function formatCommandHelp(command: CommandName): string {
  const { usage, does, units, example, exits = [], page }: CommandRow = COMMANDS[command];
  const rows = optionsOf(command);
  const nameOf = ({ name, takes }: (typeof rows)[number]): string => `--${name}${takes ? ` ${takes}` : ''}`;
  const width = Math.max(...rows.map((row) => nameOf(row).length));
  const options = rows.map(
    (row) => `  ${nameOf(row).padEnd(width)}  ${row.says}${row.usual === undefined ? '' : ` (${row.usual})`}`,
  );
  const codes = [
    '0  done',
    '1  a fault of the program',
    '2  bad input: one line says what is wrong, and what is allowed',
    ...exits,
  ];
  return `shapeflight ${usage}
  ${does}

Options (in brackets what is usual, where one is left out)
${options.join('\n')}

Units      ${units}
Example    shapeflight ${example}
Exit codes
${codes.map((code) => `  ${code}`).join('\n')}
More       ${page}

${CLOSING}
`;
}

/** A list in lines of some 70 characters, indented under its first. */
function wrap(words: readonly string[]): string {
  const lines = [''];
  for (const word of words) {
    const last = lines[lines.length - 1];
    if (last.length + word.length > 66) lines.push(word);
    else lines[lines.length - 1] = last ? `${last}, ${word}` : word;
  }
  return lines.join(',\n            ');
}
