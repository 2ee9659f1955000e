import { makeTheme } from "../parts/makeTheme.ts";

/** What stands on the page where another page has put it into a frame: presses meant for the one could land on the other. */
export function Framed() {
  makeTheme();
  return (
    <div class="page page-shelf">
      <main class="sheet">
        <div class="answer-block">
          <h1 class="answer">duskline does not open inside another page.</h1>
          <p class="more">
            <a href={location.href} target="_blank" rel="noopener">
              Open it by itself
            </a>
          </p>
        </div>
      </main>
    </div>
  );
}
