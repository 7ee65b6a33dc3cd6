package datumpeg.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;

class LimitBarTest {
  private final LimitBar bar = new LimitBar(0.0072, 0.0022);

  @Test
  void theMarkStandsInTheMiddleAtZeroAndAtTheBracketsOnTheGuardedLimit() {
    assertEquals("     [----------#----------]     ", bar.text(0));
    assertEquals("     [----------|---------#]     ", bar.text(0.00499));
    assertEquals("     [#---------|----------]     ", bar.text(-0.00499));
  }

  @Test
  void whatIsOnlyJustOutsideIsNotDrawnInside() {
    assertFalse(bar.isInside(0.00501));
    assertEquals("     [----------|----------#     ", bar.text(0.00501));
    assertEquals("     #----------|----------]     ", bar.text(-0.00501));
  }

  @Test
  void farOutTheMarkIsAnArrow() {
    assertEquals("     [----------|----------]    >", bar.text(0.1));
    assertEquals("<    [----------|----------]     ", bar.text(-0.1));
  }

  @Test
  void aMeterThatCannotDecideTheLimitIsNeverInside() {
    LimitBar blunt = new LimitBar(0.002, 0.003);
    assertFalse(blunt.isInside(0));
    assertEquals("                #                ", blunt.text(0));
    assertEquals("                |    #           ", blunt.text(0.0005));
  }

  @Test
  void whereTheUncertaintyTakesMostOfTheLimitNearIsToldFromFar() {
    LimitBar narrow = new LimitBar(0.0072, 0.0068);
    assertEquals("              [-|#]              ", narrow.text(0.0003));
    assertEquals("              [-|-]#             ", narrow.text(0.0012));
    assertEquals("              [-|-]          #   ", narrow.text(0.0047));
    assertEquals("<             [-|-]              ", narrow.text(-0.0063));
  }
}
