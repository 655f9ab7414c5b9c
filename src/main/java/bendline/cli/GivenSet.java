package bendline.cli;

import bendline.compare.CastSet;
import bendline.report.ReadCast;
import java.util.List;

/**
 * A set of casts as the command line named it.
 *
 * @param set for the comparison
 * @param read those that were filmed, for the pictures
 */
record GivenSet(CastSet set, List<ReadCast> read) {}
