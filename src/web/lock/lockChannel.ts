/** Where the windows of one browser hear of the lock. */
export const lockChannel = 'platewright-lock';
