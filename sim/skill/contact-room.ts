/** The contact room, passed in to whoever composes phases: it is loaded when a skill needs it and not before. */
import type * as ContactRoom from '../contact/index.ts';

export type Contact = typeof ContactRoom;
