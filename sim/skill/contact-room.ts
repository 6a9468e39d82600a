/** The contact room, passed in to the code that composes phases: it is loaded when a skill needs it and not before. */
import type * as ContactRoom from '../contact/index.ts';
import type * as StartRoom from '../contact/start-room.ts';

/** Swing and push: what a skill is launched with. */
export type Contact = typeof StartRoom;
/** The landing too, which brings its engine. */
export type WholeContact = typeof ContactRoom;
