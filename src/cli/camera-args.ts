/** The arguments of "camera": numbers in the units people type. What a camera can be is checked where it is used. */
import { parseArgs } from 'node:util';
import { type FilmCamera, fitToFrame, USUAL_CAMERA } from '../../sim/index.ts';
import { CommandError } from './command-error.ts';
import { optionsOf, wordNoOption } from './command-table.ts';

export interface CameraCommand {
  readonly kind: 'camera';
  readonly skill: string;
  readonly camera: FilmCamera;
  readonly csv?: string;
  /** what a film would be known to is asked for */
  readonly errors: boolean;
}

const RAD = Math.PI / 180;

/** The option that each number is typed as. */
export const OPTION_OF: Readonly<Record<keyof FilmCamera, string>> = {
  away: 'away',
  up: 'up',
  offSquare: 'off-square',
  aim: 'aim',
  view: 'view',
  framesHz: 'frames',
  shutter: 'shutter',
  lines: 'lines',
  width: 'picture',
  height: 'picture',
};

export function parseCamera(argv: readonly string[]): CameraCommand {
  const { values, positionals, tokens } = parseArgs({
    args: withNegatives(argv),
    allowPositionals: true,
    strict: false,
    tokens: true,
    options: Object.fromEntries(
      optionsOf('camera').map(({ name, takes }) => [
        name,
        { type: takes === undefined ? ('boolean' as const) : ('string' as const) },
      ]),
    ),
  });
  const seen = new Set<string>();
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    if (!optionsOf('camera').some(({ name }) => name === token.name)) throw wordNoOption('camera', token.name);
    if (seen.has(token.name)) throw new CommandError(`--${token.name} is given twice; once is enough`);
    seen.add(token.name);
  }
  const [skill, ...more] = positionals;
  if (!skill) throw new CommandError('camera: SKILL is missing: a file or the id of a preset');
  if (more.length > 0) throw new CommandError(`camera: "${more[0]}" is one argument too many`);
  const textOf = (name: string): string | undefined => {
    const value = values[name];
    if (value === undefined) return undefined;
    if (typeof value !== 'string' || value === '') throw new CommandError(`camera: --${name}: a value is needed`);
    return value;
  };
  const numberOf = (name: string, unit = 1): number | undefined => {
    const text = textOf(name);
    if (text === undefined) return undefined;
    const x = name === 'shutter' || name === 'lines' ? secondsOf(text) : Number(text);
    if (text.trim() === '' || !Number.isFinite(x)) throw new CommandError(`--${name}: "${text}" is not a number`);
    return x * unit;
  };
  const typed = {
    away: numberOf('away'),
    up: numberOf('up'),
    offSquare: numberOf('off-square', RAD),
    aim: numberOf('aim'),
    view: numberOf('view', RAD),
    framesHz: numberOf('frames'),
    shutter: numberOf('shutter'),
    lines: numberOf('lines'),
    ...pictureOf(textOf('picture')),
  };
  const given = Object.fromEntries(Object.entries(typed).filter(([, x]) => x !== undefined)) as Partial<FilmCamera>;
  // what is usual gives way to the rate that was typed; what was typed does not
  const framesHz = given.framesHz !== undefined && given.framesHz > 0 ? given.framesHz : USUAL_CAMERA.framesHz;
  const camera = { ...fitToFrame({ ...USUAL_CAMERA, framesHz }), ...given };
  const csv = textOf('csv');
  return { kind: 'camera', skill, camera, errors: values.errors === true, ...(csv === undefined ? {} : { csv }) };
}

/** "--off-square -20" is a value, not an option. */
const withNegatives = (argv: readonly string[]): string[] => {
  const out: string[] = [];
  for (const arg of argv) {
    const last = out[out.length - 1];
    if (/^-[\d.]/.test(arg) && last?.startsWith('--') && !last.includes('=')) out[out.length - 1] = `${last}=${arg}`;
    else out.push(arg);
  }
  return out;
};

/** "0.001" or "1/1000" */
function secondsOf(text: string): number {
  const [, over, under] = /^\s*([\d.]+)\s*\/\s*([\d.]+)\s*$/.exec(text) ?? [];
  return over === undefined ? Number(text) : Number(over) / Number(under);
}

function pictureOf(text: string | undefined): { readonly width?: number; readonly height?: number } {
  if (text === undefined) return {};
  const [, width, height] = /^\s*(\d+)\s*[x×]\s*(\d+)\s*$/.exec(text) ?? [];
  if (width === undefined) throw new CommandError(`--picture: "${text}" is no size; as 1920x1080`);
  return { width: Number(width), height: Number(height) };
}
