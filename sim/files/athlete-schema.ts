/** An athlete in a file: a human by stature and mass, or a tree of segments. Types are inferred from these schemas. */
import * as v from 'valibot';
import { angle, listOf, may, name, one, plainName, say, schemaLink, text, triple, within } from './schema-parts.ts';

const override = v.strictObject({
  massKg: may(within(0.001, 250, 'kg'), 'Mass of the segment.'),
  lengthM: may(within(0.005, 2.5, 'm'), 'Length of the segment.'),
  centreShare: may(within(0, 1.5, ''), 'Distance of the mass centre from the proximal end, as a share of the length.'),
  radiiShare: may(
    triple(0.001, 2, ''),
    'Radii of gyration about the front-back, lateral and long axis, as shares of the length.',
  ),
});

const humanSchema = v.strictObject({
  kind: v.literal('human', '"human"'),
  name: say(name, 'Name of the athlete.'),
  club: may(text(200), 'Club; changes nothing.'),
  sex: say(one('female', 'male'), 'Chooses the published proportions of segments.'),
  massKg: say(within(10, 250, 'kg'), 'Body mass.'),
  statureM: say(within(0.8, 2.5, 'm'), 'Standing height.'),
  ageYears: may(
    within(3, 100, 'years'),
    'Age. Below 18 it decides what share of the mass each segment has; left out: an adult.',
  ),
  shoulderHalfWidthM: may(
    within(0.02, 0.5, 'm'),
    'Distance of each shoulder joint from the midline; left out: the published ratio times the stature.',
  ),
  hipHalfWidthM: may(
    within(0.02, 0.5, 'm'),
    'Distance of each hip joint from the midline; left out: the published ratio times the stature.',
  ),
  segments: may(
    v.record(name, override),
    'Measured values in place of the generated ones, by segment: head, upperTrunk, middleTrunk, lowerTrunk, upperArm, forearm, hand, thigh, shank, foot, or one side as upperArmL.',
  ),
});

const point = triple(-10, 10, 'm');
const moment = within(-1e6, 1e6, 'kg·m²');
const hinge = v.strictObject({
  name: say(plainName, 'Name of the hinge: angles are keyed by it.'),
  axis: say(triple(-1, 1, ''), 'Unit vector of the axis, in the frame of the parent turned by the hinges before it.'),
  rangeDeg: may(
    v.strictTuple([angle, angle], 'two numbers from -720 to 720 deg'),
    'Smallest and largest angle; beyond them is a caution, not an error.',
  ),
  mirror: may(plainName, 'Name of the same hinge on the other side.'),
  mirrorSign: may(v.picklist([1, -1], '1 or -1'), 'Sign of the angle when left and right change places.'),
});
const contactPoint = v.strictObject({
  name: say(plainName, 'Name of the point.'),
  part: say(name, 'Part of the body that it belongs to, as a word.'),
  pointM: say(point, 'Place in the frame of the segment.'),
  radiusM: say(within(0, 5, 'm'), 'Radius of the ball around the point.'),
});
const capsule = v.strictObject({
  kind: v.literal('capsule'),
  aM: say(point, 'One end, in the frame of the segment.'),
  bM: say(point, 'Other end.'),
  radiusAM: say(within(0, 5, 'm'), 'Radius at the first end.'),
  radiusBM: say(within(0, 5, 'm'), 'Radius at the other end.'),
});
const ellipsoid = v.strictObject({
  kind: v.literal('ellipsoid'),
  centreM: say(point, 'Centre, in the frame of the segment.'),
  radiiM: say(triple(0, 5, 'm'), 'Radii along x, y and z of the segment.'),
});
const treeSegment = v.strictObject({
  name: say(plainName, 'Name of the segment.'),
  parent: may(plainName, 'Name of a segment above in the list; left out for the root, which comes first.'),
  jointM: may(point, 'The joint in the frame of the parent; it is the origin of the frame of this segment.'),
  hinges: may(listOf(hinge, 6), 'Hinges of the joint, from parent to child; none: fixed.'),
  massKg: say(within(1e-9, 100000, 'kg'), 'Mass.'),
  centreM: say(point, 'Mass centre in the frame of the segment.'),
  inertiaKgM2: say(
    v.strictTuple([moment, moment, moment, moment, moment, moment], 'six numbers: xx, yy, zz, xy, xz, yz'),
    'Inertia about the mass centre: xx, yy, zz, xy, xz, yz.',
  ),
  group: may(one('upper', 'arms', 'legs', 'whole'), 'Part whose angular momentum is reported together.'),
  side: may(one('left', 'right', 'centre'), 'Side of the body.'),
  contacts: may(listOf(contactPoint, 100), 'Points that can touch down.'),
  shapes: may(
    listOf(v.variant('kind', [capsule, ellipsoid], 'kind "capsule" or "ellipsoid"'), 50),
    'Solids that are drawn; they change nothing.',
  ),
});
const SEGMENTS = 'a list of 1 to 200 segments';
const framePoint = v.strictObject({
  segment: say(name, 'Segment that the point moves with.'),
  pointM: say(point, 'Place in the frame of the segment.'),
});

const treeSchema = v.strictObject({
  kind: v.literal('tree', '"tree"'),
  name: say(name, 'Name of the body.'),
  club: may(text(200), 'Club; changes nothing.'),
  segments: say(
    v.pipe(v.array(treeSegment, SEGMENTS), v.minLength(1, SEGMENTS), v.maxLength(200, SEGMENTS)),
    'The segments, each after its parent.',
  ),
  framePoints: may(
    v.strictObject({
      hipL: say(framePoint, 'Left hip.'),
      hipR: say(framePoint, 'Right hip.'),
      shoulderL: say(framePoint, 'Left shoulder.'),
      shoulderR: say(framePoint, 'Right shoulder.'),
    }),
    'Hips and shoulders that somersault, tilt and twist are counted by; left out: the root segment is what turns.',
  ),
});
export const athleteSchema = v.variant('kind', [humanSchema, treeSchema], 'an athlete of kind "human" or "tree"');

export const ATHLETE_FORMAT = 'shapeflight-athlete';
export const ATHLETE_VERSION = 1;
export const athleteFileSchema = v.strictObject({
  $schema: schemaLink,
  format: say(v.literal(ATHLETE_FORMAT, `"${ATHLETE_FORMAT}"`), 'Says what the file is.'),
  version: say(v.literal(ATHLETE_VERSION, String(ATHLETE_VERSION)), 'Version of this form.'),
  athlete: say(athleteSchema, 'The athlete.'),
});

export type HumanAthlete = v.InferOutput<typeof humanSchema>;
export type Athlete = v.InferOutput<typeof athleteSchema>;
export type SegmentOverride = v.InferOutput<typeof override>;
