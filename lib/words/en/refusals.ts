/** Why something was not done, and what to do about it. Keyed by the refusal's code. */
export const refusals = {
  invalid: 'Not kept yet. Put right what is marked below.',
  'not-signed-in': 'You are signed out. Sign in again; what you typed is still here.',
  'not-allowed': 'Your role does not allow this. Ask the owner or the head baker.',
  'not-found': 'There is nothing here under this address.',
  stale: '{who} changed this at {at}. What you typed is kept below; look at the change, then send it again.',
  'stale-moved-on': 'This has moved on since you opened it. Look at how it stands now.',
  'wrong-password': 'That is not your password. Nothing was signed.',
  'too-many-tries': 'Too many wrong tries. Wait a quarter of an hour, or ask the owner for a new password link.',
  'outcome-unknown': 'The connection broke at the last moment, and it is not certain whether this was kept. Look before you send it again.',
  away: 'The bakery’s book does not answer. Nothing was kept; try again in a moment.',
  'link-dead': 'This link has been used, withdrawn or is over a day old. Ask for a new one.',
  'wrong-sign-in': 'E-mail or password is wrong, or there were too many tries. After several wrong tries, wait a quarter of an hour.',
  'last-owner': 'A bakery needs an owner. Make somebody else an owner first.',
  'own-role': 'You cannot change your own role or switch yourself off. Another owner does that.',
  'doughs-open': { one: 'One dough is still open. Measure it, or stop the trial early with a reason.', other: '{count} doughs are still open. Measure them, or stop the trial early with a reason.' },
} as const
