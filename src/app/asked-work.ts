/** What a panel knows of work that it has asked for. */
import type { Accessor } from 'solid-js';

export interface AskedWork<P> {
  /** the answer shown is of an older question */
  readonly stale: Accessor<boolean>;
  readonly progress: Accessor<P | undefined>;
  readonly failed: Accessor<string>;
  /** asks once more */
  again(): void;
}
