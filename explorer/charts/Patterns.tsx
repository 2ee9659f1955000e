/** Dot, line and slope: what tells the parts of a stack apart where colour cannot. */
export function Patterns() {
  return (
    <defs>
      <pattern id="sun-dots" width="5" height="5" patternUnits="userSpaceOnUse">
        <rect class="sun-dim" width="5" height="5" />
        <circle class="sun-mark" cx="1.6" cy="1.6" r="1.05" />
      </pattern>
      <pattern id="sun-lines" width="5" height="5" patternUnits="userSpaceOnUse">
        <rect class="sun-dim" width="5" height="5" />
        <path class="sun-stroke" d="M0 2.5H5" />
      </pattern>
      <pattern id="sun-slope" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <rect class="sun-dim" width="6" height="6" />
        <path class="sun-stroke" d="M0 3H6" />
      </pattern>
      <pattern id="source" width="5" height="5" patternUnits="userSpaceOnUse">
        <rect class="leaf-fill" width="5" height="5" />
        <path class="leaf-stroke" d="M2.5 0V5" />
      </pattern>
      <pattern id="spilled" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect class="sheet-fill" width="7" height="7" />
        <path class="sun-stroke" d="M0 3.5H7" />
      </pattern>
      <pattern id="load-dots" width="5" height="5" patternUnits="userSpaceOnUse">
        <rect class="load-fill" width="5" height="5" />
        <circle class="load-mark" cx="1.6" cy="1.6" r="1" />
      </pattern>
      <pattern id="load-lines" width="4.5" height="4.5" patternUnits="userSpaceOnUse">
        <path class="load-stroke" d="M0 2.2H4.5" />
      </pattern>
      <pattern id="load-slope" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <path class="load-stroke" d="M0 2.5H5" />
      </pattern>
      <pattern id="unserved" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="warn-stroke" d="M0 3.5H7" />
      </pattern>
      <pattern id="short" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="warn-stroke" d="M0 4.5H9" />
      </pattern>
    </defs>
  );
}
