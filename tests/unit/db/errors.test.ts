import { expect, it } from 'vitest'
import { readDatabaseFault } from '@/lib/db/errors'

// PostgreSQL documentation, appendix A "PostgreSQL Error Codes": disk_full, out_of_memory, too_many_connections,
// configuration_limit_exceeded, io_error, idle_in_transaction_session_timeout, transaction_timeout.
it.each(['53100', '53200', '53300', '53400', '58030', '25P03', '25P04'])(
  '%s is no bug but a database that is busy',
  (code) => {
    const error = Object.assign(new Error('of the adapter'), {
      meta: { driverAdapterError: { cause: { kind: 'postgres', code, originalCode: code } } },
    })
    expect(readDatabaseFault(error).kind).toBe('busy')
  },
)
