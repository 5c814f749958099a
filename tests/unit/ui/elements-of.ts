import { isValidElement, type ReactNode } from 'react'

export type PlainElement = { tag: string; props: Record<string, unknown> }

/**
 * The HTML elements that a tree of plain server components comes to, in order. React's own renderer for text does not
 * load under the `react-server` condition that the unit tests run with; components without hooks are just functions.
 */
export function elementsOf(node: ReactNode): PlainElement[] {
  if (Array.isArray(node)) return node.flatMap((each: ReactNode) => elementsOf(each))
  if (!isValidElement<{ children?: ReactNode }>(node)) return []
  if (typeof node.type === 'function') {
    const component = node.type as (props: unknown) => ReactNode
    return elementsOf(component(node.props))
  }
  const inside = elementsOf(node.props.children)
  return typeof node.type === 'string' ? [{ tag: node.type, props: { ...node.props } }, ...inside] : inside
}
