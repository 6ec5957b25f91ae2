// Before the first test: the product is built by its own launcher, which takes as long as it takes.
import { Product } from './product';

export default async function build(): Promise<void> {
  await (await Product.serve()).stop();
}
