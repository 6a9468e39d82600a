/** The skill file as valibot schemas: types, ranges, no unknown fields. The published JSON Schema is made from this. */
import * as v from 'valibot';
import { key, listOf, name, one, plainName, text, triple, within } from './schema-parts.ts';
import { sheetPartSchema } from './sheet-file.ts';
import { SKILL_FORMAT, SKILL_VERSION } from './skill-file.ts';
import { arrivalSchema, swingSchema, takeoffContactSchema } from './whole-schema.ts';

const time = v.strictObject({ anchor: one('takeoff', 'apex', 'touchdown'), s: within(-60, 60, 's') });

const override = v.strictObject({
  massKg: v.optional(within(0.001, 250, 'kg')),
  lengthM: v.optional(within(0.005, 2.5, 'm')),
  centreShare: v.optional(within(0, 1.5, '')),
  radiiShare: v.optional(triple(0.001, 2, '')),
});
const humanSchema = v.strictObject({
  kind: v.literal('human', '"human"'),
  name,
  club: v.optional(text(200)),
  sex: one('female', 'male'),
  massKg: within(10, 250, 'kg'),
  statureM: within(0.8, 2.5, 'm'),
  shoulderHalfWidthM: v.optional(within(0.02, 0.5, 'm')),
  hipHalfWidthM: v.optional(within(0.02, 0.5, 'm')),
  segments: v.optional(v.record(name, override)),
});

const point = triple(-10, 10, 'm');
const treeSegment = v.strictObject({
  name: plainName,
  parent: v.optional(plainName),
  jointM: v.optional(point),
  hinges: v.optional(
    listOf(
      v.strictObject({
        name: plainName,
        axis: triple(-1, 1, ''),
        rangeDeg: v.optional(v.strictTuple([key, key], 'two numbers from -720 to 720 deg')),
        mirror: v.optional(plainName),
        mirrorSign: v.optional(v.picklist([1, -1], '1 or -1')),
      }),
      6,
    ),
  ),
  massKg: within(1e-9, 100000, 'kg'),
  centreM: point,
  inertiaKgM2: v.strictTuple(
    Array.from({ length: 6 }, () => within(-1e6, 1e6, 'kg m2')) as unknown as [
      ReturnType<typeof within>,
      ReturnType<typeof within>,
      ReturnType<typeof within>,
      ReturnType<typeof within>,
      ReturnType<typeof within>,
      ReturnType<typeof within>,
    ],
    'six numbers: xx, yy, zz, xy, xz, yz',
  ),
  group: v.optional(one('upper', 'arms', 'legs', 'whole')),
  side: v.optional(one('left', 'right', 'centre')),
  contacts: v.optional(
    listOf(v.strictObject({ name: plainName, part: name, pointM: point, radiusM: within(0, 5, 'm') }), 100),
  ),
  shapes: v.optional(
    listOf(
      v.variant(
        'kind',
        [
          v.strictObject({
            kind: v.literal('capsule'),
            aM: point,
            bM: point,
            radiusAM: within(0, 5, 'm'),
            radiusBM: within(0, 5, 'm'),
          }),
          v.strictObject({ kind: v.literal('ellipsoid'), centreM: point, radiiM: triple(0, 5, 'm') }),
        ],
        'kind "capsule" or "ellipsoid"',
      ),
      50,
    ),
  ),
});
const framePoint = v.strictObject({ segment: name, pointM: point });
const treeSchema = v.strictObject({
  kind: v.literal('tree', '"tree"'),
  name,
  club: v.optional(text(200)),
  segments: v.pipe(
    v.array(treeSegment, 'a list of 1 to 200 segments'),
    v.minLength(1, 'a list of 1 to 200 segments'),
    v.maxLength(200, 'a list of 1 to 200 segments'),
  ),
  framePoints: v.optional(
    v.strictObject({ hipL: framePoint, hipR: framePoint, shoulderL: framePoint, shoulderR: framePoint }),
  ),
});
export const athleteSchema = v.variant('kind', [humanSchema, treeSchema], 'an athlete of kind "human" or "tree"');

const surface = v.strictObject({
  kind: one('floor', 'mat', 'trampoline', 'water', 'other'),
  heightM: within(-20, 20, 'm'),
});
const angles = v.record(name, key);
const shapeSchema = v.strictObject({ title: text(80), word: text(40), angles });

const momentum = v.union(
  [
    v.strictObject({ vectorKgM2PerS: triple(-100000, 100000, 'kg m2/s') }),
    v.strictObject({
      ratesRevPerS: v.strictObject({
        somersault: within(-20, 20, 'rev/s'),
        tilt: v.optional(within(-20, 20, 'rev/s')),
        twist: v.optional(within(-20, 20, 'rev/s')),
      }),
    }),
    v.strictObject({ straightSomersaults: within(-20, 20, 'somersaults') }),
  ],
  'exactly one of vectorKgM2PerS (three numbers), ratesRevPerS (somersault, tilt, twist from -20 to 20), straightSomersaults (from -20 to 20)',
);

export const skillSchema = v.strictObject({
  format: v.literal(SKILL_FORMAT, `"${SKILL_FORMAT}"`),
  version: v.literal(SKILL_VERSION, String(SKILL_VERSION)),
  title: text(200),
  note: v.optional(text(2000)),
  sheet: v.optional(sheetPartSchema),
  athlete: v.union(
    [v.strictObject({ ref: text(200) }), athleteSchema],
    'an athlete of kind "human" or "tree", or {"ref": id}',
  ),
  gravityMPerS2: v.optional(within(0, 30, 'm/s2')),
  takeoff: v.strictObject({
    massCentreHeightM: v.optional(within(-20, 50, 'm')),
    lowestPointHeightM: v.optional(within(-20, 50, 'm')),
    velocityMPerS: v.strictObject({
      along: within(-15, 15, 'm/s'),
      up: within(-20, 20, 'm/s'),
      across: v.optional(within(-15, 15, 'm/s')),
    }),
    attitudeDeg: v.optional(
      v.strictObject({
        somersault: v.optional(within(-720, 720, 'deg')),
        tilt: v.optional(within(-79, 79, 'deg')),
        twist: v.optional(within(-720, 720, 'deg')),
      }),
    ),
    momentum,
  }),
  end: v.union(
    [v.strictObject({ durationS: within(0.02, 60, 's'), surface: v.optional(surface) }), v.strictObject({ surface })],
    'a durationS from 0.02 to 60 s, or a surface to touch down on (kind, heightM from -20 to 20), or both',
  ),
  schedule: v.strictObject({
    base: v.optional(name),
    blocks: v.optional(
      listOf(
        v.strictObject({
          shape: name,
          from: time,
          to: time,
          arms: v.optional(one('front', 'side', 'direct')),
          adjustDeg: v.optional(angles),
        }),
        500,
      ),
    ),
    keys: v.optional(
      listOf(
        v.strictObject({
          angle: name,
          at: time,
          deg: key,
          kind: v.optional(one('stop', 'pass')),
          nextDeg: v.optional(key),
        }),
        10000,
      ),
    ),
    samples: v.optional(
      listOf(
        v.strictObject({
          angle: name,
          startS: within(-60, 60, 's'),
          rateHz: within(1, 10000, 'Hz'),
          deg: listOf(key, 20000),
        }),
        200,
      ),
    ),
    contacts: v.optional(
      listOf(v.strictObject({ hand: one('both', 'L', 'R'), on: one('shin', 'behindKnee'), from: time, to: time }), 100),
    ),
    smoothing: v.optional(
      v.variant(
        'criterion',
        [
          v.strictObject({ criterion: v.literal('gcv') }),
          v.strictObject({ criterion: v.literal('noise'), rmsDeg: within(0.0001, 90, 'deg') }),
        ],
        'criterion "gcv", or "noise" with rmsDeg',
      ),
    ),
  }),
  approach: v.optional(
    v.variant('kind', [swingSchema, takeoffContactSchema], 'an approach of kind "swing" or "contact"'),
  ),
  arrival: v.optional(arrivalSchema),
  shapes: v.optional(v.record(name, shapeSchema)),
  target: v.optional(
    v.strictObject({
      somersaults: within(0, 20, 'somersaults'),
      direction: v.optional(one('backward', 'forward')),
      twists: within(0, 20, 'twists'),
      twistTo: v.optional(one('left', 'right')),
      landingAngleDeg: v.optional(within(-180, 180, 'deg')),
    }),
  ),
});

export const ATHLETE_FORMAT = 'shapeflight-athlete';
export const ATHLETE_VERSION = 1;
export const athleteFileSchema = v.strictObject({
  format: v.literal(ATHLETE_FORMAT, `"${ATHLETE_FORMAT}"`),
  version: v.literal(ATHLETE_VERSION, String(ATHLETE_VERSION)),
  athlete: athleteSchema,
});
