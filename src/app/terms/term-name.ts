/** The special words that explain themselves. */
export type TermName = 'tilt' | 'longAxis' | 'momentOfInertia' | 'angularMomentum' | 'wobble';
