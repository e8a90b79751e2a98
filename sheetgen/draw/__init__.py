"""Fourth stage: worked parts to drawings at true size."""
