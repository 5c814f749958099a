import 'server-only'

/** When somebody is called to look at a dough, as a bakery says it. */
export const looksColumns = {
  foldEveryMin: true,
  restLookMin: true,
  restMostMin: true,
  coolLookMin: true,
  coolMostMin: true,
  retardLookMin: true,
  retardMostMin: true,
} as const
