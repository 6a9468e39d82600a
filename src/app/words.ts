/** Every text of the application, in one place, ready for translation. Numbers come in already formatted. */
import { sideOf } from '../../sim/math/side.ts';

const angleWords: Record<string, string> = {
  neckFlexion: 'Neck bend',
  neckSideBend: 'Neck side bend',
  neckTurn: 'Neck turn',
  thoracicFlexion: 'Chest bend',
  thoracicSideBend: 'Chest side bend',
  thoracicTurn: 'Chest turn',
  lumbarFlexion: 'Waist bend',
  lumbarSideBend: 'Waist side bend',
  lumbarTurn: 'Waist turn',
  shoulderPlane: 'arm plane',
  shoulderElevation: 'arm raise',
  shoulderTurn: 'arm turn',
  elbowFlexion: 'elbow bend',
  forearmPronation: 'forearm turn',
  wristFlexion: 'wrist bend',
  hipFlexion: 'hip pike',
  hipAbduction: 'leg spread',
  hipTurn: 'leg turn',
  kneeFlexion: 'knee bend',
  anklePlantarFlexion: 'toe point',
};
const bothWords: Record<string, string> = {
  shoulderPlane: 'Arm plane',
  shoulderElevation: 'Arm raise',
  shoulderTurn: 'Arm turn',
  elbowFlexion: 'Elbow bend',
  forearmPronation: 'Forearm turn',
  wristFlexion: 'Wrist bend',
  hipFlexion: 'Hip pike',
  hipAbduction: 'Leg spread',
  hipTurn: 'Leg turn',
  kneeFlexion: 'Knee bend',
  anklePlantarFlexion: 'Toe point',
};
const partWords: Record<string, string> = {
  pelvis: 'pelvis',
  middleTrunk: 'belly',
  upperTrunk: 'chest',
  head: 'head',
  upperArm: 'upper arm',
  forearm: 'forearm',
  hand: 'hand',
  thigh: 'thigh',
  shank: 'shank',
  foot: 'foot',
};
/** at the beginning of a sentence */
const firstPartWords: Record<string, string> = {
  pelvis: 'Pelvis',
  middleTrunk: 'Belly',
  upperTrunk: 'Chest',
  head: 'Head',
};

export const texts = {
  product: 'Shapeflight',
  untitled: 'Untitled skill',
  exportFailed: 'The file could not be made.',
  printFailed: 'The print sheet could not be opened.',
  standingCaution:
    'A model, not coaching advice. New skills only with a qualified coach, progressions, spotting and matting; local and federation rules come first.',
  compared: 'Compared with a measured athlete: nothing yet.',
  comparedWhat:
    'Compared with a measured athlete: nothing yet, neither flight, swing, contact nor landing. Bodies were compared with published moments of men alone.',
  standingCautionShort: 'A model, not coaching advice.',

  bar: {
    undo: 'Undo',
    redo: 'Redo',
    undoOf: (title: string) => `Undo: ${title}`,
    redoOf: (title: string) => `Redo: ${title}`,
    skills: 'Skills',
    open: 'Open file',
    save: 'Save file',
    saveVersion1: 'Save as version 1',
    saveOriginal: 'Save as it was',
    saveOriginalWhy: 'The file that this skill was opened from, unchanged. It is of an older version.',
    skillsTitle: 'Open another skill',
    theme: 'Menu',
    colours: 'Colours',
    help: 'Keys',
    menu: 'Menu',
    version: 'A',
    versionTitle: 'Version A, the one shown',
  },
  themes: { system: 'As the system', light: 'Light', dark: 'Dark' },

  sentence: {
    label: 'Result',
    computingSwing: 'Computing the swing …',
    computingPush: 'Computing the push …',
    landing: 'landing',
    short: 'short',
    past: 'past',
    upright: 'upright',
    straightDown: 'straight down',
    headDown: 'head down',
    leaning: (deg: string, way: 'back' | 'forward') => `leaning ${deg}° ${way}`,
    places: {
      takeoff: 'Go to the take-off',
      fastestTwist: 'Go to the fastest twist',
      apex: 'Go to the highest point',
      nearest: 'Go to the nearest point',
      touchdown: 'Go to the landing',
    },
    beforeDrag: 'Before this change:',
    code: (code: string, difficulty: string, trade: string, dive: string) =>
      // the difficulty is the trampoline's: not for a flight into water
      `${dive ? `dive ${dive}; ${code}` : `${code} (difficulty ${difficulty})`}${trade ? `, ${trade}` : ''}`,
    codeMeans: 'Trampoline code, difficulty and usual name',
    noCode: (reason: string) => `No code: ${reason}`,
    noDive: (reason: string) => `No dive number: ${reason}`,
  },

  judged: {
    open: 'What was judged',
    title: 'What was judged, and what not',
    samples: (n: string) =>
      `${n} landings, each with other values out of these ranges. A share of the ranges, not a chance.`,
    varied: 'Varied',
    from: 'from',
    to: 'to',
    source: 'where it is from',
    names: {
      legs: 'Stiffness of the legs, times',
      bend: 'How far the legs give, times',
      mat: 'Stiffness of the mat, times',
      reaction: 'Reaction, s',
      strength: 'Strength, times',
    } as Record<string, string>,
    limits: [
      'A landing is run in a plane with both legs alike: turned by more than 30°, tilted by more than 10°, legs 20° apart or moving across at more than 1 m/s it is not computed. After half to one and a half twists 50 to 83 % of landings were uneven (Marinšek & Čuk).',
      'A twist is called missed from 30° off, a tilt from 10°; what comes nearer to a rail, table or board than 10 cm is named first. These widths are judgement; 30° is the smallest judging band, from memory.',
    ],
  },

  caution: {
    word: 'Caution.',
    go: (s: string) => `Go to ${s} s`,
    more: (n: number) => `${n} more`,
    overlap: (limb: string, through: string, s: string, mm: string) =>
      `${limb} passes through the ${through} at ${s} s, ${mm} mm deep.`,
    stopped: 'Stopped.',
    keeps: 'The last flight that worked is shown.',
    undo: 'Undo last change',
    all: 'All cautions',
    none: 'No cautions in this flight.',
  },

  stage: {
    unrolled: 'Flight, unrolled along time',
    side: 'Side, to scale',
    front: 'Front',
    top: 'Top',
    upright: 'Held upright, from the front',
    uprightShort: 'Upright',
    left: 'left',
    right: 'right',
    metres: 'm',
    picture: (what: string, summary: string) => `${what}. ${summary}`,
    noRenderer:
      'This browser cannot draw the figures: neither WebGL nor a canvas will start. Turn on hardware acceleration, or open the page in another browser. Curves, values and files work as ever.',
    compressed: 'heights above the mark are compressed; bodies keep their size',
  },

  shapes: {
    title: 'Body shape',
    hint: 'drag an edge to retime it',
    none: 'This skill is keyed joint by joint',
    edgeFrom: (shape: string) => `${shape} begins`,
    edgeTo: (shape: string) => `${shape} ends`,
    block: (shape: string, from: string, to: string) => `${shape}, held from ${from} to ${to} seconds`,
    movedEdge: (what: string, s: string, by: string) => `${what} at ${s} s, ${by}`,
    later: (s: string) => `${s} later`,
    earlier: (s: string) => `${s} earlier`,
    retime: (shape: string) => `Retime ${shape}`,
    same: 'where it was',
    list: 'All shapes',
    listTitle: 'Body shapes',
    shapeOf: (n: string) => `Shape ${n}`,
    from: 'From',
    to: 'To',
    arms: 'Arms travel',
    paths: { front: 'in front', side: 'by the side', direct: 'straight there' } as Record<string, string>,
    plain: 'As the shape',
    remove: 'Delete',
    addHere: (s: string) => `Add a shape at ${s} s`,
    added: (shape: string) => `Add ${shape}`,
    removed: (shape: string) => `Delete ${shape}`,
    changed: (shape: string) => `Change ${shape} to another shape`,
    armsOf: (shape: string) => `Change the path of the arms into ${shape}`,
    asShape: (shape: string) => `Reset ${shape} to the catalogue`,
    moving: 'move',
    before: 'as at take-off',
  },

  plots: {
    label: 'Shapes, joints and what they cause',
    rate: 'Turning rate',
    tilt: 'Tilt',
    toRight: 'head to the right',
    toLeft: 'head to the left',
    twistSides: { left: 'to the left', right: 'to the right' },
    fromPlane: 'From somersault plane',
    moments: 'Moment of inertia',
    momentsHint: 'lateral, front–back above; long axis below, own scale',
    momentum: 'Angular momentum',
    momentumHint: (unit: string) => `by body part, ${unit}`,
    energy: 'Energy',
    energyHint: 'top edge: total',
    twist: 'twist',
    somersault: 'somersault',
    Twist: 'Twist',
    Somersault: 'Somersault',
    longAxis: 'long axis',
    lateral: 'lateral',
    frontBack: 'front–back',
    area: (value: string, plural: boolean, degrees: boolean) =>
      degrees ? `area: ${value} of twist` : plural ? `area: ${value} twists` : `area: ${value} twist`,
    trunk: 'trunk and head',
    legs: 'legs',
    arms: 'arms',
    whole: 'whole body',
    height: 'height',
    rising: 'rising',
    along: 'along',
    turning: 'turning',
    limbs: 'limbs',
    tabs: { twist: 'Twist', tilt: 'Tilt', momentum: 'Momentum', energy: 'Energy' },
    choose: 'Plot shown here',
    kinds: {
      twistRate: 'Twist rate',
      somersaultRate: 'Somersault rate',
      rates: 'Turning rates',
      tilt: 'Tilt',
      longMoment: 'Moment about the long axis',
      lateralMoment: 'Moment about the lateral axis',
      moments: 'Moments of inertia',
      momentum: 'Angular momentum',
      energy: 'Energy',
    } as Record<string, string>,
  },

  cut: {
    label: 'Values at the cursor',
    at: (s: string) => `At ${s} s`,
    twist: 'twist',
    somersault: 'somersault',
    tilt: 'tilt',
    tiltWord: (deg: number) =>
      Math.abs(deg) < 0.05 || Number.isNaN(deg) ? 'tilt' : `tilt, head to the ${deg > 0 ? 'right' : 'left'}`,
    notDefined: 'not defined here',
    times: (n: string) => `long axis, ${n} times less than lateral`,
    longAxis: 'about the long axis',
    lateralAxis: 'about the lateral axis',
    constant: 'constant in flight',
    muscle: (energy: string) => `${energy} from muscle`,
    soFar: (what: string) => `${what} so far `,
    of: (whole: string) => ` of ${whole}`,
    parts: (list: string) => list,
    spoken: (s: string, shape: string, twist: string, somersault: string, degrees: boolean, tilt: string) =>
      `${s} seconds, ${shape === '' ? '' : `${shape}, `}twist ${twist}, somersault ${somersault} ${degrees ? 'degrees' : 'revolutions'} per second, tilt ${tilt} degrees`,
    headUp: 'head up',
    headDown: 'head down',
    lying: 'lying',
    inMove: (word: string) => `moving to ${word}`,
  },

  /** in place of sim's own words: the page has units with signs, and less room */
  sensitive: {
    open: 'How sensitive',
    title: 'Sensitive',
    working: 'Flying it a little otherwise …',
    failed: 'It could not be computed.',
    how: 'Usual errors: 0.25° of tilt, 3 % of momentum, 12 ms, 5 ms of a late hand; held against 30° of twist and 5° at the landing. One error at a time, nothing corrected in the air.',
  },
  explain: {
    longMoment: 'long-axis moment',
    lateralMoment: 'lateral moment',
    twistRate: 'twist rate',
    somersaultRate: 'somersault rate',
    rateOf: (value: string, unit: string, turned: boolean) => `${value} ${unit}${turned ? ' the other way' : ''}`,
    putIn: (energy: string) => `the joints put in ${energy}`,
    tookOut: (energy: string) => `the joints took out ${energy}`,
    angleOf: (value: string, side: string) => `${value}°${side ? ` to the ${side}` : ''}`,
    fromTo: (what: string, before: string, after: string) => `${what} ${before} to ${after}`,
  },
  changed: 'What changed',

  files: {
    drop: 'Drop a skill file anywhere',
    opened: (title: string) => `Open ${title}`,
    failed: (name: string) => `${name} was not opened.`,
    notSaved: (name: string) => `${name} was not saved as version 1.`,
    notFlown: 'The skill as it is now has not been flown.',
    nothingLost: 'Nothing was changed.',
    allowed: 'allowed: ',
    found: 'found ',
    dismiss: 'Close',
    /** the mark tells a file apart from the one that "Save file" writes */
    fileName: (title: string, mark = '') =>
      `${
        title
          .toLowerCase()
          .replace(/[^a-z0-9]+/g, '-')
          .replace(/^-|-$/g, '') || 'skill'
      }${mark && `.${mark}`}.json`,
  },

  picker: {
    title: 'Skills',
    athletes: 'Athletes',
    opens: 'Opening a skill is one step: undo brings the old one back.',
    search: 'Find a skill',
    changed: (name: string) => `Change athlete to ${name}`,
  },

  help: { title: 'Keys', hint: 'On an edge or key: arrows move it, Shift moves further, Enter types.' },
  groups: { time: 'Time', edit: 'Edit', tool: 'Tools', file: 'File', view: 'View' } as Record<string, string>,

  part: (name: string): string => {
    if (partWords[name]) return partWords[name];
    const word = partWords[name.slice(0, -1)];
    return word ? `${name.endsWith('L') ? 'left' : 'right'} ${word}` : name;
  },

  /** the same at the beginning of a sentence */
  firstPart: (name: string): string => {
    const word = partWords[name.slice(0, -1)];
    return firstPartWords[name] ?? (word ? `${name.endsWith('L') ? 'Left' : 'Right'} ${word}` : name);
  },

  joint: (name: string): string => {
    const side = sideOf(name);
    const stem = side && name.slice(0, -1) in bothWords ? name.slice(0, -1) : name;
    const word = angleWords[stem];
    if (!word) return name;
    if (side && stem !== name) return `${side === 'L' ? 'Left' : 'Right'} ${word}`;
    return bothWords[name] ?? word;
  },
};
