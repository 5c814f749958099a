import { PrismaPg } from '@prisma/adapter-pg'
import {
  ColumnTypeEnum,
  DriverAdapterError,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils'
import pg from 'pg'

const charType = 18

/**
 * Prisma's adapter with two faults mended that only show in migrations:
 * it cuts a script at every semicolon, also inside a function's body or a comment (here the script goes whole, as
 * one transaction); and it refuses the one-byte "char" columns of the catalogue, so that a live database could
 * not be looked at.
 */
export function migrationAdapter(
  connectionString: string,
): SqlMigrationAwareDriverAdapterFactory & { close(): Promise<void> } {
  const pool = new CharAsTextPool({ connectionString })
  const factory = new PrismaPg(pool, { disposeExternalPool: false })
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    // The engine never lets go of its connection, nor of the lock under which it migrates.
    close: () => pool.end(),
    connectToShadowDb: () => factory.connectToShadowDb(),
    async connect() {
      const adapter = (await factory.connect()) as Awaited<ReturnType<PrismaPg['connect']>> & {
        underlyingDriver(): pg.Pool
      }
      const readRows = adapter.queryRaw.bind(adapter)
      adapter.queryRaw = async (query) => {
        const result = await readRows(query)
        const chars = charColumns.get(result.rows) ?? []
        return {
          ...result,
          columnTypes: result.columnTypes.map((type, at) => (chars.includes(at) ? ColumnTypeEnum.Character : type)),
        }
      }
      adapter.executeScript = async (script) => {
        try {
          await adapter.underlyingDriver().query(script)
        } catch (error) {
          if (!(error instanceof pg.DatabaseError)) throw error
          const { code = 'N/A', severity = 'N/A', message, detail, column, hint } = error
          throw new DriverAdapterError({ kind: 'postgres', code, severity, message, detail, column, hint })
        }
      }
      return adapter
    },
  }
}

/** Which columns of a result were of type "char", kept beside its rows. */
const charColumns = new WeakMap<object, number[]>()

class CharAsTextPool extends pg.Pool {
  constructor(config: pg.PoolConfig) {
    super(config)
    const run = this.query.bind(this) as (...args: unknown[]) => Promise<pg.QueryArrayResult>
    this.query = (async (...args: unknown[]) => {
      const result = await run(...args)
      // A script of several statements answers with a list of results, none of which anybody reads.
      if (Array.isArray(result)) return result
      const chars = result.fields.flatMap((field, at) => (field.dataTypeID === charType ? [{ field, at }] : []))
      if (chars.length === 0) return result
      for (const { field } of chars) field.dataTypeID = pg.types.builtins.TEXT
      charColumns.set(
        result.rows,
        chars.map(({ at }) => at),
      )
      return result
    }) as typeof this.query
  }
}
