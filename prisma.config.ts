import { defineConfig } from 'prisma/config'

// The address comes from the environment at run time (lib/ops); the schema alone needs none.
export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
  datasource: { url: process.env.OWNER_DATABASE_URL ?? process.env.DATABASE_URL ?? '' },
})
