/** Other words that tools and values are found by. They come with what is found, after the first picture. */
type Words = Readonly<Record<string, readonly string[]>>;

export const findWords: { readonly commands: Words; readonly fields: Words } = {
  /** by the id of the tool's command */
  commands: {
    'tool-pose': ['hand', 'arm', 'leg', 'limb', 'shape by hand'],
    'tool-compare': ['side by side', 'two versions', 'before and after a change', 'arms wide against arms in'],
    'tool-account': ['energy', 'tilt', 'wobble', 'why does it twist'],
    'tool-contact': [
      'steps',
      'small step',
      'hop',
      'landing after the flight',
      'swing',
      'push',
      'take-off before the flight',
      'mat',
    ],
    'tool-ask': ['what if', 'how much momentum', 'margin', 'most twist', 'limit'],
    'tool-estimate': ['formula', 'by hand', 'back of an envelope'],
    'tool-film': [
      'camera',
      'filming',
      'clip',
      'video',
      'frame by frame',
      'times from film',
      'recording',
      'markers',
      'motion capture',
      'BVH',
      'TRC',
      'C3D',
      'measured',
      'lens',
    ],
    'tool-class': ['worksheet', 'school', 'students', 'pupils', 'teacher', 'questions', 'homework', 'hand in'],
    'tool-hand': ['share', 'send', 'give away', 'link', 'address', 'privacy', 'name, age, mass'],
  },
  /** by the id of the field */
  fields: {
    airTime: ['time in the air', 'flight time', 'hang time'],
    rise: ['jump height', 'how high', 'rise'],
    up: ['speed', 'take-off speed', 'vertical speed'],
    along: ['travel', 'drift'],
    momentum: ['angular momentum', 'rotation off the floor', 'spin'],
    straight: ['straight somersaults', 'enough for'],
    rate: ['turning rate', 'rotation rate'],
    lean: ['attitude', 'angle at take-off'],
    tilt: ['tilt off the floor'],
    twist: ['twist off the floor'],
    mass: ['weight', 'body weight'],
    stature: ['how tall', 'height of the athlete', 'body height'],
    age: ['years'],
  },
};
