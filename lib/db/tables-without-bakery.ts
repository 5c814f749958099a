/** The only tables without a bakery in their key. They hold nothing of a bakery but a pointer to it. */
export const tablesWithoutBakery = [
  'install',
  'start_mark',
  'sign_in_pointer',
  'sign_in_limit',
  'job_run',
  '_prisma_migrations',
] as const
