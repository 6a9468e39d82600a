/** Words of a recording. */
export const recordingTexts = {
  none: 'No recording is open.',
  noneHint: 'BVH, TRC, C3D or CSV. It stays on this machine.',
} as const;
