/** What the desk says of the steps of a dough; the names of steps are those of the tablets. */
export const steps = {
  title: 'Done so far',
  none: 'No step is entered yet. Steps are entered on the tablets.',
  runs: '{phase}: until {at}',
  over: '{phase}: time was up at {at}',
  byAt: '{at}, {who}',
} as const
