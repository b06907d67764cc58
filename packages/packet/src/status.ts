/** Exit statuses of the command. */
export const STATUS: { readonly fine: 0; readonly stop: 1; readonly unreadable: 2; readonly machine: 3 } = {
  fine: 0,
  stop: 1,
  unreadable: 2,
  machine: 3,
};

/** A call that cannot be followed; the message says what would do. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}
