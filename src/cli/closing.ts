/** The last lines of everything that a command says: what the numbers were held against, and the usual caution. */
import { CAUTION, COMPARED } from '../../sim/index.ts';

export const CLOSING = `${COMPARED}\nCaution. ${CAUTION}`;
