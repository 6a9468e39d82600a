/** The phases of a skill as a file says them: swing or contact before the flight, the flight, the landing after it. */
import * as v from 'valibot';
import { scheduleSchema } from './schedule-schema.ts';
import { angle, listOf, may, name, one, pair, say, text, triple, within } from './schema-parts.ts';
import { targetSchema } from './target-schema.ts';

const jointName = one('shoulder', 'hip', 'knee', 'ankle');
const velocitySchema = v.strictObject({
  along: say(within(-15, 15, 'm/s'), 'Along the way the athlete faces.'),
  up: say(within(-20, 20, 'm/s'), 'Up.'),
  across: may(within(-15, 15, 'm/s'), 'To the right of the athlete; left out: 0.'),
});

const attitude = v.strictObject({
  somersault: may(within(-720, 720, 'deg'), '+ backward; left out: 0.'),
  tilt: may(within(-79, 79, 'deg'), '+ with the head to the right; left out: 0.'),
  twist: may(within(-720, 720, 'deg'), '+ to the left; left out: 0.'),
});

const swingKeys = listOf(
  v.strictObject({
    joint: say(jointName, 'Joint.'),
    atS: may(within(0, 60, 's'), 'Seconds after the start, where the keys lie over time.'),
    atDeg: may(within(-3600, 3600, 'deg'), 'Swing angle, where the keys lie over the angle.'),
    deg: say(angle, 'Angle of the joint then.'),
    kind: may(one('stop', 'pass'), 'stop: the joint rests there (if left out); pass: it moves through.'),
  }),
  200,
);
const swingMoves = v.strictObject({
  over: say(one('time', 'angle'), 'What the keys lie over.'),
  rounds: may(within(1, 20, 'rounds'), 'The keys again for each turn, or each periodS; a whole number.'),
  periodS: may(within(0.1, 60, 's'), 'Time of one round, where the keys lie over time.'),
  keys: say(swingKeys, 'What the joints do; the keys of one joint in their order.'),
  last: may(swingKeys, 'Keys of the last round, in place of keys.'),
});
const swingRelease = v.union(
  [
    v.strictObject({ atDeg: say(within(-3600, 3600, 'deg'), 'Swing angle, 0 under the bar, counted on.') }),
    v.strictObject({ atS: say(within(0.001, 20, 's'), 'Seconds after the start.') }),
  ],
  'atDeg (swing angle, -3600 to 3600) or atS (0.001 to 20)',
);
const railName = one('highBar', 'unevenHigh', 'unevenLow');
const sense = one('backward', 'forward');
const strength = may(
  within(0.1, 10, ''),
  'Joints have so many times the strength of the body; left out: strength is not checked, and the torque needed is reported.',
);
const releaseLateS = may(within(-0.5, 0.5, 's'), 'How much later (+) or earlier than that they let go.');
const lateHand = may(
  v.strictObject({
    hand: say(one('left', 'right'), 'Which hand.'),
    lateS: say(within(0, 0.1, 's'), 'How much longer it holds on.'),
  }),
  'One hand holds on longer.',
);
const armsKNPerM = within(5, 50, 'kN/m');
/** A state on the rail: what a catch hands over. */
const caughtSchema = v.strictObject({
  armsDeg: say(within(-3600, 3600, 'deg'), 'Angle of the link that grips, + about Z.'),
  armsDegPerS: say(within(-2000, 2000, 'deg/s'), 'How fast it turns.'),
  railM: say(pair(-1, 1, 'm'), 'The rail from its rest place, along and up.'),
  railMPerS: say(pair(-20, 20, 'm/s'), 'How fast it moves.'),
  jointsDeg: say(v.record(name, angle), 'Angles of shoulder, hip, knee and ankle.'),
  jointsDegPerS: say(v.record(name, within(-5000, 5000, 'deg/s')), 'Their rates.'),
  gapM: may(
    pair(-0.1, 0.1, 'm'),
    'The middle of the rail from where it lies in a hand, forward and towards the head in the frame of the arms as they hang; left out: 0.',
  ),
  heldDeg: may(v.record(name, angle), 'Every other angle of the body that is not 0, by its name: held.'),
  armsKNPerM: may(armsKNPerM, 'What both arms give, in series with the rail; 15 if left out.'),
});
export const swingSchema = v.strictObject({
  kind: v.literal('swing', '"swing"'),
  rail: say(railName, 'Stiffness, damping, mass and height of the bar.'),
  sense: say(
    sense,
    'The way the body turns: backward, the feet go to where the athlete faces as they pass under the bar.',
  ),
  start: say(
    v.union(
      [
        v.strictObject({
          handstandNudgeDegPerS: say(within(0.1, 280, 'deg/s'), 'Still in the handstand (-180 deg), turned by this.'),
        }),
        v.strictObject({ castDeg: say(within(-720, 720, 'deg'), 'Still at this swing angle.') }),
        v.strictObject({
          angleDeg: say(within(-720, 720, 'deg'), 'Swing angle.'),
          rateDegPerS: say(within(-1000, 1000, 'deg/s'), 'How fast the body turns there.'),
        }),
        v.strictObject({ caught: say(caughtSchema, 'The state that a catch hands over.') }),
      ],
      'exactly one of handstandNudgeDegPerS (0.1 to 280), castDeg (-720 to 720), angleDeg with rateDegPerS, caught',
    ),
    'How the swing starts.',
  ),
  moves: say(swingMoves, 'What the joints do on the bar.'),
  release: say(swingRelease, 'When the hands let go.'),
  releaseLateS,
  lateHand,
  durationS: say(within(0.01, 20, 's'), 'The longest the swing may last.'),
  strength,
});

/** A flight that ends with the hands at a rail, and the swing that follows. */
export const catchSchema = v.strictObject({
  kind: v.literal('catch', '"catch"'),
  rail: say(railName, 'Which rail: its height, stiffness, damping and mass.'),
  alongM: may(
    within(-5, 5, 'm'),
    'Where it is, from the rail let go, or where none was, from the mass centre at take-off; left out: 0.',
  ),
  hands: may(one('both', 'left', 'right'), 'Which hands are to meet it; both if left out.'),
  gapM: may(within(0.01, 0.1, 'm'), 'How far from the rail a hand may be and still close on it; 0.05 if left out.'),
  closingMPerS: may(
    within(0.1, 10, 'm/s'),
    'The most that the body may move along the arms to or from it; 2 if left out.',
  ),
  armsKNPerM: may(armsKNPerM, 'Stiffness of both arms, in series with the rail; 15 if left out.'),
  swing: may(
    v.strictObject({
      sense: say(sense, 'The way the body turns on the rail.'),
      moves: say(swingMoves, 'What the joints do on the rail, from the catch on.'),
      release: may(swingRelease, 'When the hands let go; left out: the skill ends on the rail.'),
      releaseLateS,
      lateHand,
      durationS: say(within(0.01, 20, 's'), 'The longest the swing may last.'),
      strength,
    }),
    'What follows; left out: the skill ends at the catch.',
  ),
});
/** The end of a flight on water. */
export const entrySchema = v.strictObject({ kind: v.literal('entry', '"entry"') });

export const contactSchema = v.strictObject({
  kind: v.literal('contact', '"contact"'),
  place: say(
    one('floor', 'springboard', 'vaultTable', 'trampoline', 'divingBoard', 'platform'),
    'Gives the values that are left out.',
  ),
  limb: may(one('hands', 'feet'), 'What is on it; left out: as usual there.'),
  timeS: may(within(0.005, 2, 's'), 'How long it lasts.'),
  frictionCoefficient: may(within(0, 3, ''), 'Friction of foot or hand on the surface.'),
  massCentreOverSurfaceM: may(within(0, 3, 'm'), 'Mean height of the mass centre over the surface.'),
  velocityMPerS: may(
    velocitySchema,
    'Velocity of the mass centre as the contact begins; left out where a flight comes before, which gives it.',
  ),
  momentumKgM2PerS: may(
    triple(-1000, 1000, 'kg·m²/s'),
    'Angular momentum about the mass centre as it begins; left out: 0, or what the flight before gives.',
  ),
  entry: may(
    v.strictObject({
      shape: say(name, 'Body shape.'),
      attitudeDeg: may(attitude, 'Attitude of the body frame; left out: 0.'),
    }),
    'How the body comes to it, where no flight comes before.',
  ),
  pulse: may(
    one('halfSine', 'early', 'late', 'flat'),
    'How the force rises and falls: as half a sine if left out; early and late have their peak at a third and at two thirds.',
  ),
  given: may(
    v.strictObject({
      meanBodyWeights: say(within(0, 50, 'body weights'), 'Mean force.'),
      leanDeg: say(within(-90, 90, 'deg'), 'Lean of the force from the vertical, + along.'),
      acrossBodyWeights: may(within(-10, 10, 'body weights'), 'Mean force to the right of the athlete; left out: 0.'),
      placeM: say(
        v.strictObject({
          along: say(within(-2, 2, 'm'), 'Along.'),
          across: may(within(-2, 2, 'm'), 'To the right of the athlete; left out: 0.'),
        }),
        'Where the force acts, from below the mass centre.',
      ),
      freeTurnKgM2PerS: may(
        within(-100, 100, 'kg·m²/s'),
        'Angular impulse about the vertical that the hands or feet give by turning; left out: 0.',
      ),
    }),
    'The force is known and gives velocity and momentum of the take-off. Left out: the take-off is stated, and the force that it needs is reported.',
  ),
});

const momentum = v.union(
  [
    v.strictObject({
      vectorKgM2PerS: say(triple(-100000, 100000, 'kg·m²/s'), 'The vector; + z turns backward who faces + x.'),
    }),
    v.strictObject({
      ratesRevPerS: say(
        v.strictObject({
          somersault: say(within(-20, 20, 'rev/s'), '+ backward.'),
          tilt: may(within(-20, 20, 'rev/s'), '+ with the head to the right; left out: 0.'),
          twist: may(within(-20, 20, 'rev/s'), '+ to the left; left out: 0.'),
        }),
        'How fast the body turns at t = 0; movement of the limbs then is included.',
      ),
    }),
    v.strictObject({
      straightSomersaults: say(
        within(-20, 20, 'somersaults'),
        'As much as would turn a straight body, arms at its sides, so many times in the time of the flight; + backward.',
      ),
    }),
  ],
  'exactly one of vectorKgM2PerS (three numbers), ratesRevPerS (somersault, tilt, twist from -20 to 20), straightSomersaults (from -20 to 20)',
);
export const takeoffFields = {
  massCentreHeightM: may(within(-20, 50, 'm'), 'Height of the mass centre at t = 0; this or lowestPointHeightM.'),
  lowestPointHeightM: may(within(-20, 50, 'm'), 'Height of the lowest point of the body at t = 0.'),
  velocityMPerS: say(velocitySchema, 'Velocity of the mass centre.'),
  attitudeDeg: may(attitude, 'Attitude of the body frame; left out: 0.'),
  momentum: say(momentum, 'Total angular momentum about the mass centre, limbs included: one of three ways to say it.'),
};
/** Which of these a flight states depends on the phase before it: check-phases.ts. */
const takeoffSchema = v.strictObject({
  ...takeoffFields,
  velocityMPerS: v.optional(takeoffFields.velocityMPerS),
  momentum: v.optional(takeoffFields.momentum),
});

const surface = v.strictObject({
  kind: say(one('floor', 'mat', 'trampoline', 'water', 'other'), 'What it is.'),
  heightM: say(within(-20, 20, 'm'), 'Height of the surface.'),
  by: may(one('hands', 'feet'), 'Only these meet it; left out: any part of the body.'),
});
export const endSchema = v.union(
  [
    v.strictObject({
      durationS: say(within(0.02, 60, 's'), 'The flight ends after this time.'),
      surface: may(surface, 'Only sets the zero of potential energy here.'),
    }),
    v.strictObject({ surface: say(surface, 'The flight ends when a part of the body comes down to this surface.') }),
  ],
  'a durationS from 0.02 to 60 s, or a surface to touch down on (kind, heightM from -20 to 20), or both',
);
export const flightSchema = v.strictObject({
  kind: v.literal('flight', '"flight"'),
  takeoff: may(
    takeoffSchema,
    'State at t = 0: whole, where no phase before gives it; height and attitude only after a contact with given; left out after a swing.',
  ),
  title: may(text(200), 'Name of this flight, in a chain of several.'),
  target: may(targetSchema, 'What this flight is meant to be; of the last one the target of the file may say it.'),
  end: say(endSchema, 'How the flight ends.'),
  schedule: say(scheduleSchema, 'What the joints do and when.'),
});

const mat = v.strictObject({
  thicknessM: say(within(0.01, 5, 'm'), 'Thickness.'),
  stiffnessKNPerM: say(within(1, 1000, 'kN/m'), 'Stiffness under both feet.'),
  dampingSPerM: say(within(0, 5, 's/m'), 'Damping: force that grows with depth and speed.'),
  friction: say(within(0, 3, ''), 'Friction of the feet.'),
});
export const landingFields = {
  mat: say(
    v.union(
      [one('competitionMat', 'withSoftLayer', 'floor', 'pit'), mat],
      'competitionMat, withSoftLayer, floor, pit, or a mat of its own (thicknessM, stiffnessKNPerM, dampingSPerM, friction)',
    ),
    'What the feet land on; its surface is that of the end of the flight.',
  ),
  legStiffness: may(within(0.1, 5, ''), 'Factor on the stiffness of all joints; 1 is a firm landing.'),
  effort: may(within(0.2, 1, ''), 'Share of the strength that is used.'),
  eccentricFactor: may(within(1, 2, ''), 'Strength of stretched muscle against its static strength; 1 if left out.'),
  reflexDelayS: may(within(0, 0.5, 's'), 'After this the joints go to a crouch; 0.06 if left out.'),
  kneeDeg: may(within(0, 143, 'deg'), 'Knees at touchdown, in place of those of the flight.'),
  keys: may(
    listOf(
      v.strictObject({
        s: say(within(0, 10, 's'), 'Seconds after touchdown.'),
        joint: say(jointName, 'Joint.'),
        deg: say(angle, 'Its angle then.'),
      }),
      200,
    ),
    'The joints follow these instead of going to a crouch.',
  ),
  durationS: may(within(0.05, 3, 's'), 'How long the landing is followed; 1 if left out.'),
};
export const landingSchema = v.strictObject({ kind: v.literal('landing', '"landing"'), ...landingFields });

export type FileVelocity = v.InferOutput<typeof velocitySchema>;
export type FileSwing = v.InferOutput<typeof swingSchema>;
export type FileSwingKey = FileSwing['moves']['keys'][number];
export type FileTakeoffContact = v.InferOutput<typeof contactSchema>;
export type FileBefore = FileSwing | FileTakeoffContact;
export type FileTakeoff = v.InferOutput<typeof takeoffSchema>;
export type FileEnd = v.InferOutput<typeof endSchema>;
export type FileSurface = v.InferOutput<typeof surface>;
export type FileFlight = v.InferOutput<typeof flightSchema>;
export type FileCatch = v.InferOutput<typeof catchSchema>;
export type FileLanding = v.InferOutput<typeof landingSchema>;
