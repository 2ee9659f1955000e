import { priceCell, priceFigure, priceHead } from "../../../engine/answers/reach/reachWords.ts";
import type { Price } from "../../../engine/reach/lever.ts";
import type { ReachOrder } from "../../../engine/reach/reachOrder.ts";

/** One of the four figures of a price; its head goes along for where the table is cards. */
export function PriceCell(props: { price: Price; order: ReachOrder }) {
  const isStated = () => priceFigure(props.price, props.order) !== null;
  return (
    <td data-head={priceHead(props.order)} class={isStated() ? undefined : "reach-unstated"}>
      {priceCell(props.price, props.order)}
    </td>
  );
}
