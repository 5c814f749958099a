import { createContext, useContext } from 'react'
import { goOn, type At } from '../keep/tablet'

/** What is open on the tablet, as it is shown. */
export const Open = createContext<At | null>(null)

/** As `goOn`, from what is shown when it is tapped. */
export function useGoOn(): (to: At | null) => Promise<void> {
  const from = useContext(Open)
  return (to) => goOn('at', from, to)
}
