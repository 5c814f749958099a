/** The product's drawing: two loaves, even in everything but one line. Decoration only. */
export function LoafPair() {
  return (
    <svg viewBox="0 0 208 64" aria-hidden="true" className="h-auto w-40 fill-none stroke-ink-2 stroke-[1.25] wide:w-full">
      <path d={loaf} />
      <path d={cuts} />
      <g transform="translate(112 0)">
        <path d={loaf} />
        <path d={cuts} />
        <path d="M44 27l14-13" className="stroke-ink stroke-[3.5]" />
      </g>
      <path d="M0 62.5h208" />
    </svg>
  )
}

const loaf = 'M7 62V40C-2 36 0 22 10 20C22 4 74 4 86 20C96 22 98 36 89 40V62'
const cuts = 'M26 27l14-13M62 27l14-13'
