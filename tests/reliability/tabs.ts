// Several tabs on one entry of the shelf: what is drawn, and how many runs.
export const TAB_ACTS = ['change', 'change', 'save', 'save', 'reload', 'kill', 'duplicate', 'close'] as const;
export const TAB_RUNS = { whole: 300, sample: 25 };
