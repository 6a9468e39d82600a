/** What a change did, in a sentence: every number of it is found again from the segments of both flights, and it is the same seen in a mirror or turned round. */
import { describe, expect, it } from 'vitest';
import { shapes } from '../../presets/index.ts';
import { type LaunchedSkill, relaunch, type SkillFile, wordVerdict } from '../../sim/index.ts';
import { flightOf } from '../../sim/math/phases.ts';
import { wordChange } from '../../sim/words/change-words.ts';
import { PLAIN_NUMBERS } from '../../sim/words/verdict-words.ts';
import { type BodyRun, continueRun } from '../../src/app/body-run.ts';
import { findCauses } from '../../src/app/change-causes.ts';
import { changedFlight } from '../../src/app/change-sentence.ts';
import { jumpEditsOf } from '../../src/app/takeoff-values.ts';
import { adjustBlock, changeAttitude, removeBlock, setAthlete, setBlockEdge } from '../../src/document/edits.ts';
import { getFields } from '../../src/document/fields.ts';
import { getSchedule } from '../../src/document/phases.ts';
import type { FlightResult } from '../../src/engine/result.ts';
import { isWhole } from '../corpus.ts';
import { sampleOf } from '../former/index.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const DEG = 180 / Math.PI;

function say(from: FlightResult, to: FlightResult) {
  const causes = findCauses(from, to, {
    shape: (file, id) => file.shapes?.[id]?.word ?? shapes[id]?.word ?? id,
    pushedOff: 'the take-off',
    length: (m) => `${m.toFixed(2)} m`,
    mass: (kg) => `${kg.toFixed(1)} kg`,
    gravity: (g) => `${g.toFixed(2)} m/s²`,
    sexes: { female: 'female', male: 'male' },
  });
  return wordChange(causes, changedFlight(from), changedFlight(to), {
    ...PLAIN_NUMBERS,
    momentum: (h) => `${h.toFixed(1)} kg·m²/s`,
  });
}
const saidOf = (from: FlightResult, to: FlightResult): string => {
  const said = say(from, to);
  return said ? `${said.lead} ${said.rest}` : '';
};

type Edit = (from: FlightResult) => SkillFile;
const typed =
  (id: string, change: (v: number) => number): Edit =>
  (from) => {
    const field = getFields(from.file, from.athlete, from.jump, jumpEditsOf(engine.jumping, from)).find(
      (one) => one.id === id,
    );
    if (!field) throw new Error(`no field ${id}`);
    return field.write(from.file, change(field.value));
  };
const blocksOf = (file: SkillFile) => getSchedule(file).blocks ?? [];
const edge =
  (index: number, side: 'from' | 'to', by: number): Edit =>
  ({ file }) => {
    const at = blocksOf(file)[index][side];
    return setBlockEdge(file, index, side, { ...at, s: at.s + by });
  };

const EDITS: readonly (readonly [string, Edit])[] = [
  ['less height', typed('rise', (v) => v - 0.05)],
  ['more time', typed('airTime', (v) => v + 0.015)],
  ['more rotation', typed('momentum', (v) => 1.02 * v)],
  ['gravity', typed('gravity', (v) => v - 0.1)],
  ['first shape longer', edge(0, 'to', 0.01)],
  ['second shape sooner', edge(1, 'from', -0.01)],
  ['an arm', ({ file }) => adjustBlock(file, 1, ['shoulderElevationL'], 60)],
  ['tilt', ({ file }) => changeAttitude(file, { tilt: 1 })],
  ['lean', ({ file }) => changeAttitude(file, { somersault: 4 })],
];
/** What has sides, or a way to face. */
const SEEN = EDITS.filter(([name]) => ['less height', 'an arm', 'tilt', 'lean'].includes(name));
const IDS = ['former/back-straight-full', 'former/double-back-tuck', 'former/trampoline-barani'];

/** In another way than the sentence: from the columns of all frames. */
function measure({ frames, flight }: FlightResult) {
  const last = frames.n - 1;
  const h = (i: number): number[] => [0, 1, 2].map((k) => frames.h_Scm_W[3 * i + k]);
  return {
    twist: Math.abs(frames.twist[last] - frames.twist[0]) * DEG,
    somersault: Math.abs(frames.somersault[last] - frames.somersault[0]) * DEG,
    time: frames.t[last],
    h: Math.hypot(...h(0)),
    up: frames.v_WScm_W[1],
    touched: flight.touchdown?.part,
  };
}

describe.each(isWhole ? IDS : IDS.slice(0, 2))('%s', (id) => {
  const from = engine.fly(sampleOf(id));
  it.each(EDITS)('%s: every number is that of the two flights', (_, edit) => {
    const to = engine.fly(edit(from));
    const text = saidOf(from, to);
    const [a, b] = [measure(from), measure(to)];
    const twist = /(\d+) deg (more|less) twist/.exec(text);
    const by = b.twist - a.twist;
    if (twist) {
      expect(Number(twist[1])).toBe(Math.round(Math.abs(by)));
      expect(twist[2]).toBe(by > 0 ? 'more' : 'less');
    } else if (!text.includes('twists ')) expect(Math.abs(by)).toBeLessThan(0.51);
    const off = /(\d+) deg (short|past)/.exec(text);
    const moved = b.somersault - a.somersault;
    if (off) {
      expect(Number(off[1])).toBe(Math.round(Math.abs(to.outline.shortDeg ?? Number.NaN)));
      expect(off[2]).toBe((to.outline.shortDeg ?? 0) > 0 ? 'short' : 'past');
    } else if (!text.includes('neither short nor past')) expect(Math.abs(moved)).toBeLessThan(4.6);
    const time = /(\d\.\d\d) s (more|less) in the air/.exec(text);
    if (time) expect(Number(time[1])).toBeCloseTo(Math.abs(b.time - a.time), 2);
    else expect(Math.abs(b.time - a.time)).toBeLessThan(0.0051);
    expect(/[^s] the same angular momentum|^The same|\. The same angular momentum/.test(text)).toBe(
      Math.abs(b.h / a.h - 1) < 1e-4,
    );
    const spread = /(\d+) % (more|less) spread from the (long|somersault) axis/.exec(text);
    if (spread) expect(spread[2] === 'less').toBe(spread[3] === 'long' ? by > 0 : moved > 0);
    const lands = /now lands on the (\w+)/.exec(text)?.[1];
    if (lands) expect(b.touched).toBe(lands);
  });

  it.each(SEEN)('%s: in a mirror left and right change places, and nothing else', (_, edit) => {
    const to = engine.fly(edit(from));
    const seen = saidOf(inMirror(from), inMirror(to));
    expect(swapSides(seen)).toBe(saidOf(from, to));
  });

  it.each(SEEN)('%s: somebody who faces the other way is said the same', (_, edit) => {
    const to = engine.fly(edit(from));
    expect(saidOf(turnedRound(from), turnedRound(to))).toBe(saidOf(from, to));
  });
});

const swapSides = (text: string): string =>
  text.replace(
    /left|right|Left|Right/g,
    (w) => ({ left: 'right', right: 'left', Left: 'Right', Right: 'Left' })[w] ?? w,
  );

const flownAs = (from: FlightResult, change: (skill: LaunchedSkill) => LaunchedSkill, file = from.file): FlightResult =>
  engine.flyAs(file, change(from.skill));

/** Names of shapes have sides too: those of the pair change places. */
const MIRRORED: Readonly<Record<string, string>> = { oneUpOneDown: 'oneDownOneUp', oneDownOneUp: 'oneUpOneDown' };

function inMirror(from: FlightResult): FlightResult {
  const { angles } = from.skill.body;
  const pose = (values: readonly number[]): number[] => angles.map((a) => a.mirrorSign * values[a.mirror]);
  const blocks = blocksOf(from.file).map((block) => ({ ...block, shape: MIRRORED[block.shape] ?? block.shape }));
  const file = {
    ...from.file,
    phases: from.file.phases.map((phase) =>
      phase.kind === 'flight' ? { ...phase, schedule: { ...phase.schedule, blocks } } : phase,
    ),
  };
  const [hx, hy, hz] = from.flight.h_Scm_W;
  return flownAs(
    from,
    (skill) => {
      const { takeoff: t, schedule: s } = skill;
      const [x, y, z] = t.v_WScm_W;
      return {
        ...relaunch(skill, {
          schedule: {
            ...s,
            base: pose(s.base),
            blocks: s.blocks.map((b) => ({ ...b, shape: MIRRORED[b.shape] ?? b.shape, pose: pose(b.pose) })),
            keys: s.keys.map((k) => ({
              ...k,
              angle: angles.indexOf(angles[angles[k.angle].mirror]),
              value: angles[k.angle].mirrorSign * k.value,
            })),
          },
          takeoff: {
            ...t,
            tilt: -t.tilt,
            twist: -t.twist,
            v_WScm_W: [x, y, -z],
            momentum: t.momentum.kind === 'straight' ? t.momentum : { kind: 'vector', h_Scm_W: [-hx, -hy, hz] },
          },
          ...(skill.contacts ? { contacts: skill.contacts.map(otherHand) } : {}),
        }),
      } as LaunchedSkill;
    },
    file,
  );
}

type HandContact = NonNullable<LaunchedSkill['contacts']>[number];
const otherHand = (contact: HandContact): HandContact =>
  JSON.parse(JSON.stringify(contact).replace(/"(L|R)"/g, (s) => (s === '"L"' ? '"R"' : '"L"')));

/** The same flight in a world turned by half a turn about the vertical. */
function turnedRound(from: FlightResult): FlightResult {
  const [hx, hy, hz] = from.flight.h_Scm_W;
  return flownAs(from, (skill) => {
    const { takeoff: t } = skill;
    const [x, y, z] = t.v_WScm_W;
    const turned = relaunch(skill, {
      takeoff: {
        ...t,
        somersault: -t.somersault,
        tilt: -t.tilt,
        twist: t.twist + Math.PI,
        v_WScm_W: [-x, y, -z],
        momentum:
          t.momentum.kind === 'straight'
            ? { kind: 'straight', somersaults: -t.momentum.somersaults }
            : { kind: 'vector', h_Scm_W: [-hx, hy, -hz] },
      },
    });
    const { target } = skill;
    // its angle is counted in the world
    return (
      target ? { ...turned, target: { ...target, landingAngle: -target.landingAngle } } : turned
    ) as LaunchedSkill;
  });
}

describe('causes', () => {
  const from = engine.fly(sampleOf('former/double-back-tuck'));
  const lead = (file: SkillFile): string => say(from, engine.fly(file))?.lead ?? '';

  it('less height, same spin: short', () => {
    expect(lead(typed('rise', (v) => v - 0.06)(from))).toMatch(/^Less height, same spin: \d+ deg short/);
  });
  it('two changes are both named, more are not', () => {
    const two = edge(0, 'to', 0.01)({ ...from, file: typed('rise', (v) => v - 0.05)(from) });
    expect(lead(two)).toMatch(/^Less height, same spin and \w.*: /);
    const many = changeAttitude(changeAttitude(two, { somersault: 3 }), { tilt: 1 });
    expect(lead(many)).toMatch(/^Several changes: /);
  });
  it('legs that open at hips and knees loosen the tuck', () => {
    const open = (by: number): SkillFile => {
      const index = blocksOf(from.file).findIndex(({ shape }) => shape === 'tuck');
      const tuck = shapes.tuck.angles as Record<string, number>;
      return ['hipFlexion', 'kneeFlexion'].reduce(
        (file, angle, i) => adjustBlock(file, index, [`${angle}L`, `${angle}R`], tuck[angle] + by * (i + 1)),
        from.file,
      );
    };
    expect(lead(open(-8))).toMatch(/^Looser tuck: /);
    expect(lead(open(2))).toMatch(/^Tighter tuck: /);
  });
  it('the spread that is said is that of the effect: of the mean of 1/I over the flight', () => {
    const index = blocksOf(from.file).findIndex(({ shape }) => shape === 'tuck');
    const file = adjustBlock(from.file, index, ['kneeFlexionL', 'kneeFlexionR'], 100);
    const to = engine.fly(file);
    const [, percent] = /the mass (\d+) % more spread from the somersault axis/.exec(say(from, to)?.rest ?? '') ?? [];
    // by hand: the trapezoid over the rows
    const mean = ({ frames }: FlightResult, of: (moment: number) => number): number => {
      let area = 0;
      for (let i = 1; i < frames.n; i++)
        area += ((of(frames.moments[3 * i]) + of(frames.moments[3 * i - 3])) / 2) * (frames.t[i] - frames.t[i - 1]);
      return area / frames.t[frames.n - 1];
    };
    const effect = mean(from, (x) => 1 / x) / mean(to, (x) => 1 / x) - 1;
    const plain = mean(to, (x) => x) / mean(from, (x) => x) - 1;
    expect(Number(percent)).toBe(Math.round(100 * effect));
    expect(Math.abs(effect - plain)).toBeGreaterThan(0.01);
  });
  it('a momentum that follows from another edit, under what is written, is no cause', () => {
    const lower = { ...from, file: typed('rise', (v) => v - 0.06)(from) };
    const both = engine.fly(typed('momentum', (v) => 1.00014 * v)({ ...engine.fly(lower.file) }));
    expect(say(from, both)?.lead).toMatch(/^Less height, same spin: \d+ deg short/);
  });
  it('the time in the air is said once, where it is all that changes', () => {
    const cat = engine.fly(sampleOf('cat-turn'));
    const said = saidOf(cat, engine.fly(typed('rise', (v) => v - 0.06)(cat)));
    expect(said).toMatch(/^Less height.*: 0\.\d\d s less in the air\. No angular momentum\.$/);
  });
  it('what is not flown is not said', () => {
    expect(say(from, engine.fly({ ...from.file, title: 'Another name' }))).toBeUndefined();
  });
  it('a shape that is taken out is named', () => {
    const full = engine.fly(sampleOf('former/back-straight-full'));
    expect(say(full, engine.fly(removeBlock(full.file, 0)))?.lead).toMatch(/^Without /);
  });
  it('a change under what is written shows none', () => {
    const file = typed('momentum', (v) => 1.0002 * v)(from);
    expect(say(from, engine.fly(file))?.lead).toMatch(/: no change that shows\.$/);
  });
  it('a landing is said as the headline says it', () => {
    const { verdict } = changedFlight(from);
    const touches = (place: 'held' | 'falls'): ReturnType<typeof changedFlight> => ({
      ...changedFlight(from),
      verdict: { ...verdict, ending: { kind: 'touches', place, direction: 'back' } } as typeof verdict,
    });
    const numbers = { ...PLAIN_NUMBERS, momentum: (h: number) => h.toFixed(1) };
    const said = wordChange([{ kind: 'other' }], touches('held'), touches('falls'), numbers);
    expect(said?.lead).toBe('This change: now would fall back.');
    expect(wordVerdict(touches('falls').verdict)).toContain('would fall back');
  });
  it('an edge that all later ones go along with is one change', () => {
    const flight = flightOf(from.file);
    const later = edge(
      1,
      'from',
      0.01,
    )({ ...from, file: edge(1, 'to', 0.01)({ ...from, file: edge(0, 'to', 0.01)(from) }) });
    expect(flight.schedule.blocks?.length).toBeGreaterThan(2);
    expect(lead(later)).not.toMatch(/^Several/);
  });
});

describe('another athlete', () => {
  const from = engine.fly(sampleOf('former/back-straight-full'));
  const given = (ref: string, keep: 'straight' | 'momentum'): FlightResult => {
    const edited = setAthlete(from.file, { ref });
    const { carryOver } = jumpEditsOf(engine.jumping, from, keep);
    return engine.fly({
      ...edited,
      phases: edited.phases.map((phase) =>
        phase.kind === 'flight' ? { ...phase, takeoff: { ...phase.takeoff, ...carryOver(edited) } } : phase,
      ),
    });
  };
  /** s; measured under 1e-7 */
  const SAME_TIME = 1e-4;

  it.each(['jory-quill', 'nell-oakum', 'tobias-fenn'])('%s: as long in the air, and enough for as many', (ref) => {
    const to = given(ref, 'straight');
    expect(Math.abs(to.flight.duration - from.flight.duration)).toBeLessThan(SAME_TIME);
    expect(to.jump.straight).toBeCloseTo(from.jump.straight ?? Number.NaN, 8);
    const said = say(from, to);
    expect(said?.lead).toMatch(/^Flown by /);
    expect(said?.rest).toMatch(/^Enough for the same .* straight somersaults .*, the same time in the air\.$/);
  });
  it('or with the same angular momentum', () => {
    const to = given('jory-quill', 'momentum');
    expect(Math.abs(to.flight.duration - from.flight.duration)).toBeLessThan(SAME_TIME);
    expect(to.jump.momentum).toBeCloseTo(from.jump.momentum, 6);
    expect(say(from, to)?.rest).toMatch(/^The same angular momentum, the same time in the air\.$/);
  });
  it('a mass that is typed changes nothing that shows, is no advice, and is never the cause in bold', () => {
    const said = say(from, engine.fly(typed('mass', (v) => v + 6)(from)));
    expect(said?.lead).toMatch(/^Another body: no change that shows\.$/);
    expect(said?.rest).toMatch(/^Mass \d+\.\d kg, /);
    const short = engine.fly(typed('momentum', (v) => 0.9 * v)(from));
    const both = say(from, { ...short, athlete: { ...short.athlete, massKg: 46 } as typeof short.athlete });
    expect(both?.lead).not.toMatch(/mass|kg/i);
  });
  it('age, stature and mass typed one after another are one change, said from the body before the first', () => {
    const steps = [typed('age', () => 13), typed('stature', () => 1.52), typed('mass', () => 42)];
    let run: BodyRun<FlightResult> | undefined;
    let before = from;
    for (const step of steps) {
      const after = engine.fly(step(before));
      run = continueRun(run, before, after);
      before = after;
    }
    expect(run?.from).toBe(from);
    const said = say(from, before);
    expect(say(run?.from ?? before, before)).toEqual(said);
    expect(said?.lead).toMatch(/^Stature 1\.52 m, age 13: .*\d+ deg (more|less) twist/);
    expect(said?.lead).not.toMatch(/no change that shows|mass|kg/);
    expect(said?.rest).toMatch(/^Mass 42\.0 kg, /);
    const turned = engine.fly(typed('momentum', (v) => 1.02 * v)(before));
    expect(continueRun(run, before, turned)).toBeUndefined();
    expect(continueRun(undefined, turned, engine.fly(typed('mass', () => 44)(turned)))?.from).toBe(turned);
  });
  it('measured segments keep their shares when mass or stature is typed', () => {
    const young = engine.fly(sampleOf('former/trampoline-barani'));
    const to = engine.fly(typed('mass', (v) => v + 5)(young));
    const mass = (one: FlightResult): number => one.flight.body.segments.reduce((sum, s) => sum + s.mass, 0);
    expect(mass(to) - mass(young)).toBeCloseTo(5, 1);
  });
});
