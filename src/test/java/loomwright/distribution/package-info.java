/** What goes out with the jar: other people's parts and their licences, and the jar as a shop installs it. */
@NullMarked
package loomwright.distribution;

import org.jspecify.annotations.NullMarked;
