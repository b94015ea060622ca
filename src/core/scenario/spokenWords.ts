/**
 * 256 plain words for reading a digest out: a word a byte. Any two differ by three letters or more and in their consonants, so
 * that they are not taken for each other across a room. The order is part of what a digest is read as: never change it.
 */
export const SPOKEN_WORDS: readonly string[] = `
  acorn album alphabet anchor ankle apricot apron attic autumn avalanche badger bagpipe ballad bamboo banjo barley basil basket
  beacon beaver beetle bellows bicycle birch blossom bluebell boathouse bonfire bonnet boomerang boulder bracelet bracken bramble
  bridge bronze buffalo bugle burrow butter buttercup cabin cactus calendar camel canoe canvas caravan carpet castle cavern cedar
  cello cherry chestnut chimney chocolate clarinet cliff clover cobweb coconut compass copper coral cottage cotton cradle cricket
  crocus crystal cuckoo cucumber cupboard curtain custard daffodil daisy dancer diamond dolphin domino donkey doorstep dragon
  drizzle dungeon earring echo elbow elephant ember engine envelope evening eyebrow falcon farmer farmyard feather fennel fiddle
  finger flute footpath forest fossil fountain fox galaxy garden garlic gazelle giraffe glacier goblet gooseberry gorse granite
  grape guitar hammock harvest hatchet hedgehog helmet horizon hurricane iceberg igloo indigo island ivory jaguar jasmine jersey
  jigsaw juniper kangaroo kingdom kitchen lagoon lantern lavender lemon leopard lettuce linen lizard lobster locket lotus magnet
  mandolin maple marigold meadow meteor midnight mirror mitten monsoon moonlight muffin mushroom napkin nickel noodle notebook
  nutmeg oatmeal octopus olive onion orange orchard orchestra ostrich oven pancake panther pasture peacock pebble pelican pencil
  piano pigeon pillow pineapple pirate planet poppy porridge potato prism pudding pumpkin puzzle quilt rabbit radish rainbow rhubarb
  ribbon river rosemary rudder saffron sandal sandwich seashell shelter shovel skylark slipper snowflake sparrow spider spiral
  sponge squirrel stable strawberry submarine summer sunflower sunset swallow sycamore teapot telescope temple thimble thunder
  toffee tortoise treasure trellis trumpet tulip turtle umbrella vanilla village vinegar violin volcano waffle walnut wardrobe
  waterfall whistle windmill window zebra
`
  .trim()
  .split(/\s+/);
