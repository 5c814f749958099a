import { createElement } from 'react'
import { expect, it } from 'vitest'
import { ArmMark, type ArmMarkProps } from '@/lib/ui/arm-mark'
import { armShape, type Arm } from '@/lib/ui/arm-shape'
import { elementsOf } from './elements-of'

const arms: Arm[] = ['control', 'A', 'B', 'C', 'D', 'E', 'F']

function markOf(props: ArmMarkProps) {
  const elements = elementsOf(createElement(ArmMark, props))
  const svg = elements.find(({ tag }) => tag === 'svg')
  return {
    className: String(svg?.props.className),
    props: svg?.props,
    title: elements.find(({ tag }) => tag === 'title')?.props.children,
  }
}

it('no two arms share a shape or a colour, so that either is enough', () => {
  expect(new Set(arms.map((arm) => armShape[arm])).size).toBe(arms.length)
  const inks = arms.map((arm) => /text-arm-\w+/.exec(markOf({ arm }).className)?.[0])
  expect(inks).not.toContain(undefined)
  expect(new Set(inks).size).toBe(arms.length)
})

it('the control is hollow, an arm only when its effect is not to be trusted', () => {
  expect(markOf({ arm: 'control' }).className).toContain('fill-none')
  expect(markOf({ arm: 'B' }).className).not.toContain('fill-none')
  expect(markOf({ arm: 'B', hollow: true }).className).toContain('fill-none')
})

it('a mark with a title is an image of that name, one without is passed over', () => {
  expect(markOf({ arm: 'A', title: 'Dough A' })).toMatchObject({ props: { role: 'img' }, title: 'Dough A' })
  expect(markOf({ arm: 'A' }).props).toMatchObject({ 'aria-hidden': true })
})
