/** The product's drawing: two loaves, even in everything but one line. Decoration only. */
export function LoafPair() {
  return (
    <svg
      viewBox="0 0 208 64"
      aria-hidden="true"
      className="h-auto w-40 fill-none stroke-ink-2 stroke-[1.25] wide:w-full"
    >
      <path d={loaf} />
      <path d={cuts} />
      <g transform="translate(112 0)">
        <path d={loaf} />
        <path d={cuts} />
        <path d="M41.5 29l13-13" className="stroke-ink stroke-[3.5]" />
      </g>
      <path d="M0 62.5h208" />
    </svg>
  )
}

const loaf = 'M8 62.5V40C1 37 1 23 10 20.5C26 6 70 6 86 20.5C95 23 95 37 88 40V62.5'
const cuts = 'M23 29l13-13M60 29l13-13'
