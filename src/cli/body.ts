/** The command "body": the segments of a body, its moments in the named shapes, and the body as MJCF. */
import {
  type Body,
  calcShapeMoments,
  formatMjcf,
  poseOf,
  provenance,
  provenancePairs,
  type ShapeData,
  shapeInRadians,
} from '../../sim/index.ts';
import { wordCall } from './call.ts';
import { CLOSING } from './closing.ts';
import type { CommandCall } from './command-line.ts';
import { readBody } from './read-input.ts';
import { formatTable } from './table.ts';
import { checkApart, writeFiles } from './write-files.ts';

export function runBody(command: CommandCall & { kind: 'body' }, args: readonly string[]): string {
  const { body, gravity, shapes, inputs, origin } = readBody(command.of);
  const wanted = command.mjcf === undefined ? [] : [{ option: '--mjcf', file: command.mjcf }];
  checkApart(wanted, inputs);
  const from = provenance({ call: wordCall('body', args), inputs: [origin], tolerance: null, seed: null });
  writeFiles(wanted.map((output) => ({ ...output, pieces: [formatMjcf(body, gravity, provenancePairs(from))] })));
  return [formatHead(body), formatSegments(body), formatShapes(body, shapes), CLOSING].join('\n\n').concat('\n');
}

function formatHead(body: Body): string {
  const size = body.stature === undefined ? '' : `, ${body.stature.toFixed(3)} m`;
  const hinges = body.segments.reduce((sum, s) => sum + s.hinges.length, 0);
  const segments = body.segments.length === 1 ? '1 segment' : `${body.segments.length} segments`;
  const age = body.age === undefined ? '' : `, ${body.age} years`;
  const head = `${body.name}: ${body.mass.toFixed(3)} kg${size}${age}, ${segments}, ${hinges === 1 ? '1 hinge' : `${hinges} hinges`}`;
  return [head, ...(body.notes ?? [])].join('\n');
}

/** Lengths in m, moments in kg·m² about the segment's own mass centre, axes of its frame. */
function formatSegments(body: Body): string {
  const number = (x: number, decimals: number): string =>
    (Math.abs(x) < 0.5 * 10 ** -decimals ? 0 : x).toFixed(decimals);
  const rows = body.segments.map((s) => [
    s.name,
    s.parent < 0 ? '-' : body.segments[s.parent].name,
    number(s.mass, 3),
    ...s.p_PoBo_P.map((x) => number(x, 3)),
    ...s.p_BoBcm_B.map((x) => number(x, 3)),
    ...s.I_BBcm_B.slice(0, 3).map((x) => number(x, 5)),
  ]);
  const head = ['segment', 'parent', 'mass kg', 'joint x', 'y', 'z', 'centre x', 'y', 'z', 'moment x', 'y', 'z'];
  return `Segments: joint in the parent's frame and mass centre in the own frame, m; moments about the own mass centre, kg·m²;\nx forward, y towards the head, z to the right\n${formatTable(head, rows, 2)}`;
}

/** A body with none of the angles that the shapes set is printed as built. */
function formatShapes(body: Body, shapes: Readonly<Record<string, ShapeData>>): string {
  const known = new Set(body.angles.map((a) => a.name));
  const fits = Object.values(shapes).some((shape) => Object.keys(shape.angles).some((name) => known.has(name)));
  const asBuilt: [string, ShapeData] = ['as built', { title: 'As built', word: 'as built', angles: {} }];
  const rows = (fits ? Object.entries(shapes) : [asBuilt]).map(([id, shape]) => {
    const pose = poseOf(body, shapeInRadians(shape), `shapes.${id}.angles`, true);
    const m = calcShapeMoments(body, pose);
    return [id, ...[m.lateral, m.frontBack, m.long, ...m.principal].map((x) => x.toFixed(3))];
  });
  const head = ['shape', 'lateral', 'front-back', 'long', 'principal 1', '2', '3'];
  return `Moments of inertia of the whole body, kg·m², about the axes of its frame and principal ones\n${formatTable(head, rows, 1)}`;
}
