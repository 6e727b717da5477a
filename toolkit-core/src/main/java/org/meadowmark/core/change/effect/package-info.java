/**
 * Whether markers worked: new scars beside marked channel segments, before and after, against those
 * beside segments without a marker.
 *
 * <p>Before–after–control–impact design after Stewart-Oaten, Murdoch &amp; Parker (1986),
 * <i>Environmental impact assessment: "pseudoreplication" in time?</i>, Ecology 67:929–940.
 */
package org.meadowmark.core.change.effect;
