/**
 * Which rows of the bench are open. A row that is not is folded to one line with its value and a small curve. The first
 * three of the idea are always open and not among these.
 */
import { type Accessor, createSignal } from 'solid-js';

export const ROW_NAMES = ['joints', 'rates', 'tilt', 'moments', 'momentum', 'energy', 'views'] as const;
export type RowName = (typeof ROW_NAMES)[number];

export interface RowsState {
  readonly open: Accessor<ReadonlySet<RowName>>;
  isOpen(row: RowName): boolean;
  /** the whole bench is open */
  readonly isAll: Accessor<boolean>;
  toggle(row: RowName): void;
  openAll(): void;
  /** none */
  calm(): void;
  /** all, or none where all are open */
  toggleAll(): void;
}

export function createRows(opened: ReadonlySet<RowName>): RowsState {
  const [open, setOpen] = createSignal(opened);
  const isAll = (): boolean => open().size === ROW_NAMES.length;
  const openAll = (): void => void setOpen(new Set(ROW_NAMES));
  const calm = (): void => void setOpen(new Set<RowName>());
  return {
    open,
    isOpen: (row) => open().has(row),
    isAll,
    toggle: (row) => {
      const next = new Set(open());
      if (!next.delete(row)) next.add(row);
      setOpen(next);
    },
    openAll,
    calm,
    toggleAll: () => (isAll() ? calm() : openAll()),
  };
}
