/** The layout of the device. That of a laptop is there at the start; those of a tablet, a phone and a hall come where they are used. */
import { type Accessor, type Component, createEffect, createSignal } from 'solid-js';
import type { LaneList } from '../../features/joints/lane-list.ts';
import { type Device, readDevice, useDevice } from '../../ui/size.ts';
import { readAddress } from '../address.ts';
import { loadPart } from '../load-part.ts';
import { BenchLayout } from './bench-layout.tsx';

export type Layout = Component<{ lanes: LaneList }>;

type LayoutName = Device | 'hall';

const load: Readonly<Record<LayoutName, () => Promise<Layout>>> = {
  bench: () => Promise.resolve(BenchLayout),
  tablet: loadPart(
    () => import('./tablet-layout.tsx'),
    (m) => m.TabletLayout,
  ),
  phone: loadPart(
    () => import('./phone-layout.tsx'),
    (m) => m.PhoneLayout,
  ),
  hall: loadPart(
    () => import('./hall-layout.tsx'),
    (m) => m.HallLayout,
  ),
};

/** A phone is no hall. */
const nameOf = (device: Device, hall: boolean): LayoutName => (hall && device !== 'phone' ? 'hall' : device);

/** The first one is awaited before anything is shown. Where it cannot be loaded, the page opens as on a laptop. */
export const loadFirstLayout = (): Promise<Layout> =>
  load[nameOf(readDevice(), readAddress(location.search).hall)]().catch(() => BenchLayout);

/** In another size the layout that is there stays until the other is. */
export function useLayout(first: Layout, hall: Accessor<boolean>): Accessor<Layout> {
  const device = useDevice();
  const name = (): LayoutName => nameOf(device(), hall());
  const [layout, setLayout] = createSignal(first);
  createEffect(() => {
    const wanted = name();
    load[wanted]().then(
      (loaded) => {
        if (name() === wanted) setLayout(() => loaded);
      },
      () => undefined,
    );
  });
  return layout;
}
