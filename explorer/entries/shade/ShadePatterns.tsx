/** Leaves by how much light they let through, shadows and sun by hatch: what tells them apart where colour cannot. */
export function ShadePatterns() {
  return (
    <svg class="unseen" aria-hidden="true" width="0" height="0">
      <defs>
        <pattern
          id="shade-leaf-close"
          width="4.5"
          height="4.5"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(20)"
        >
          <circle class="leaf-dot" cx="1.2" cy="1.2" r="1" />
          <circle class="leaf-dot" cx="3.4" cy="3.4" r="1" />
        </pattern>
        <pattern
          id="shade-leaf-middle"
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(20)"
        >
          <circle class="leaf-dot" cx="2" cy="2" r="1.1" />
          <circle class="leaf-dot" cx="5.5" cy="5.5" r="1.1" />
        </pattern>
        <pattern
          id="shade-leaf-thin"
          width="11"
          height="11"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(20)"
        >
          <circle class="leaf-dot" cx="3" cy="3" r="1" />
          <circle class="leaf-dot" cx="8.5" cy="8.5" r="1" />
        </pattern>
        <pattern id="shade-ground" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(60)">
          <path class="shadow-stroke" d="M0 0V5" />
        </pattern>
        <pattern id="shade-wall" width="5" height="5" patternUnits="userSpaceOnUse">
          <path class="wall-stroke" d="M0 2.5H5" />
        </pattern>
      </defs>
    </svg>
  );
}
